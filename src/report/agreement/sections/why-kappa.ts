import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { cohenKappa } from "../../../stats/agreement/cohen-kappa.js";
import { kappaAtPrevalence } from "../../../stats/agreement/kappa-at-prevalence.js";
import { decimalText, percentText } from "../../number-text.js";
import type { Section } from "../../text.js";
import { chosenPair } from "./page-words.js";

/** The chosen pair's table merged at the grade from which treatment changes, and what the slider shows. */
export interface Prevalence {
  readonly n: number;
  readonly agreement: number;
  /** Share of readings at or above that grade, as found and as shown. */
  readonly found: number;
  readonly shown: number;
  readonly foundKappa: number | null;
  readonly shownKappa: number | null;
  readonly because: string | null;
  readonly from: string;
}

/** Merges the grades in two and works out kappa at the prevalence shown; null when the pair has no radiograph. */
export function prevalenceOf(page: AgreementPage): Prevalence | null {
  const { table, n } = chosenPair(page).crossTable;
  if (n === 0) return null;
  const { treatedFrom, prevalence } = page.choices;
  const merged = [0, 1].map((i) =>
    [0, 1].map((j) =>
      table.reduce(
        (sum, row, a) =>
          sum +
          row.reduce(
            (s, count, b) => s + (Number(a >= treatedFrom) === i && Number(b >= treatedFrom) === j ? count : 0),
            0,
          ),
        0,
      ),
    ),
  );
  const agreement = (merged[0]![0]! + merged[1]![1]!) / n;
  const found = (2 * merged[1]![1]! + merged[0]![1]! + merged[1]![0]!) / (2 * n);
  const shown = prevalence ?? found;
  const kappa = cohenKappa(merged);
  const there = kappaAtPrevalence(agreement, shown);
  return {
    n,
    agreement,
    found,
    shown,
    foundKappa: kappa.estimate,
    shownKappa: there.estimate,
    because: there.estimate === null ? there.because : null,
    from: page.grades.grades[treatedFrom]!,
  };
}

/** Why is kappa low when agreement is high? */
export function whyKappa(page: AgreementPage): Section | null {
  const found = prevalenceOf(page);
  if (found === null) return null;
  const { agreement, n, from } = found;
  const kappaText = (kappa: number | null): string => (kappa === null ? "not estimable" : decimalText(kappa, 2));
  return {
    id: "why",
    question: "Why can kappa be low when agreement is high?",
    answer: [
      [
        `With the grades merged in two, ${from} and above against the rest, the two readings agree in ${percentText(agreement, n)}; ${percentText(found.found, n)} of readings are ${from} or above, and kappa is ${kappaText(found.foundKappa)}.`,
      ],
      [
        found.because === null
          ? `If the same agreement were met where ${percentText(found.shown, n)} of readings are ${from} or above, kappa would be ${kappaText(found.shownKappa)}.`
          : `At ${percentText(found.shown, n)} kappa has no value: ${found.because}.`,
      ],
      [
        "Nothing in how the observers read has changed: the rarer one side is, the more agreement chance alone would give.",
      ],
    ],
    cautions: [],
    tables: [],
  };
}
