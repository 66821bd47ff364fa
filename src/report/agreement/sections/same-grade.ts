import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { specificAgreement } from "../../../stats/agreement/specific-agreement.js";
import { kappaMaximum } from "../../../stats/agreement/kappa-maximum.js";
import type { RaterPair } from "../../../stats/agreement/rater-pairs.js";
import { decimalText, levelText, listText, percentRangeText, percentText } from "../../number-text.js";
import type { Paragraph, Section, Span, TextTable } from "../../text.js";
import { coefficientText, rangeText } from "../coefficient-text.js";
import { chosenPair, columnName, imagesSpan, within } from "./page-words.js";

/** Would another observer grade it the same? */
export function sameGrade(page: AgreementPage): Section {
  return {
    id: "same",
    question: "Would another observer grade it the same?",
    answer: answer(page),
    cautions: [
      ["Kappa depends on how common the grades are: it means nothing without the table and the agreement beside it."],
    ],
    tables: [crossTableOf(page), pairsTable(page)],
  };
}

function answer(page: AgreementPage): Paragraph[] {
  const pair = chosenPair(page);
  const [a, b] = pair.raters;
  const names = `${columnName(page, a)} and ${columnName(page, b)}`;
  if (pair.agreement.estimate === null) return [[`${names}: ${pair.agreement.because}.`]];
  const { level } = page.choices;
  const share = (found: RaterPair["agreement"], title: string, distance: number): Span[] => {
    if (found.estimate === null) return [found.because];
    const ci = `${percentText(found.estimate, found.n)}; ${levelText(level)} CI ${percentRangeText(found.interval, found.n)}`;
    return [imagesSpan(page, `${found.agreeing} of ${found.n}`, title, within(pair, distance)), ` radiographs (${ci})`];
  };
  return [
    [`${names} gave the same grade to `, ...share(pair.agreement, "The same grade", 0), "."],
    ["They were at most one grade apart in ", ...share(pair.withinOne, "At most one grade apart", 1), "."],
    [kappaSentence(page)],
    [gradesSentence(page)],
  ];
}

function kappaSentence(page: AgreementPage): string {
  const pair = chosenPair(page);
  const { level } = page.choices;
  const { linear, unweighted, quadratic } = pair.kappa;
  if (linear.estimate === null) return `Kappa cannot be estimated: ${linear.because}.`;
  const place = page.grades.pairs.indexOf(pair);
  const bootstrap = page.grades.pairBootstrap[place];
  const resampled =
    bootstrap && bootstrap.estimate !== null && "low" in bootstrap.interval
      ? `; from ${page.grades.resamples} resamples ${rangeText(bootstrap.interval)}`
      : "";
  const most = kappaMaximum(pair.crossTable.table, { weights: "linear" });
  const ceiling =
    most.estimate === null
      ? ""
      : ` With these numbers of each grade it could reach ${decimalText(most.estimate, 2)} at most.`;
  return `Kappa with linear weights was ${coefficientText(linear, level)}${resampled}; unweighted ${coefficientText(unweighted, level)}, with quadratic weights ${coefficientText(quadratic, level)}.${ceiling}`;
}

function gradesSentence(page: AgreementPage): string {
  const pair = chosenPair(page);
  const parts = specificAgreement(pair.crossTable.table).grades.map(({ grade, both, one, value }) => {
    const name = `grade ${page.grades.grades[grade]!}`;
    return value.estimate === null ? `${name} was not given` : `${name} ${percentText(value.estimate, both + one)}`;
  });
  return `When one gave a grade, how often did the other too? ${listText(parts)}.`.replace("? g", "? G");
}

function crossTableOf(page: AgreementPage): TextTable {
  const { crossTable, raters } = chosenPair(page);
  const { grades } = page.grades;
  const [a, b] = [columnName(page, raters[0]), columnName(page, raters[1])];
  return {
    caption: `Grades by ${a} (rows) and ${b} (columns)`,
    head: [`${a} \\ ${b}`, ...grades, "all"],
    rows: crossTable.table.map((row, i) => [
      grades[i]!,
      ...row.map((count, j) =>
        imagesSpan(
          page,
          String(count),
          `${a} grade ${grades[i]!}, ${b} grade ${grades[j]!}`,
          crossTable.members[i]![j]!,
        ),
      ),
      String(row.reduce((sum, count) => sum + count, 0)),
    ]),
    notes:
      crossTable.incomplete === 0 ? [] : [`Left out, as one or both readings are missing: ${crossTable.incomplete}.`],
  };
}

function pairsTable(page: AgreementPage): TextTable {
  const { level } = page.choices;
  return {
    caption: "Every pair of readings",
    head: ["Pair", "Radiographs", "Same grade", "Within one", "Kappa", "Linear", "Quadratic"],
    rows: page.grades.pairs.map((pair) => {
      const name = `${columnName(page, pair.raters[0])}, ${columnName(page, pair.raters[1])}`;
      const { agreement, withinOne, kappa, crossTable } = pair;
      if (agreement.estimate === null || withinOne.estimate === null)
        return [name, "0", "none", "none", "none", "none", "none"];
      return [
        name,
        String(crossTable.n),
        imagesSpan(page, percentText(agreement.estimate, crossTable.n), `Same grade, ${name}`, within(pair, 0)),
        imagesSpan(page, percentText(withinOne.estimate, crossTable.n), `Within one, ${name}`, within(pair, 1)),
        ...[kappa.unweighted, kappa.linear, kappa.quadratic].map((one) =>
          one.estimate === null ? "not estimable" : `${decimalText(one.estimate, 2)} (${rangeText(one.interval)})`,
        ),
      ];
    }),
    notes: [`In brackets ${levelText(level)} intervals, large-sample (Fleiss, Cohen and Everitt 1969).`],
  };
}
