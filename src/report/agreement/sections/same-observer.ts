import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { counted, decimalText, levelText, percentText } from "../../number-text.js";
import type { Section, TextTable } from "../../text.js";
import type { FleissEstimate } from "../../../stats/agreement/fleiss-kappa.js";
import { coefficientText } from "../coefficient-text.js";
import { columnName } from "./page-words.js";

/** Would the same observer, and do all of them together? */
export function sameObserver(page: AgreementPage): Section {
  const { grades, choices } = page;
  const { variation, fleiss, conger, ac1, ac2, alpha } = grades;
  const { level } = choices;
  const intra = variation
    ? [
        [
          `With themselves, on another day, the observers had a linear kappa of ${coefficientText(variation.intra.kappa, level)}; with each other, on the same day, ${coefficientText(variation.inter.kappa, level)}.`,
        ],
        [`The difference is ${coefficientText(variation.difference, level)}. The two are never mixed.`],
      ]
    : [["Nobody read twice, so nothing can be said of an observer's agreement with himself or herself."]];
  const row = (name: string, used: string, value: Parameters<typeof coefficientText>[0]) => [
    name,
    used,
    coefficientText(value, level),
  ];
  const complete = counted(fleiss.images, "complete radiograph");
  return {
    id: "together",
    question: "And the same observer, or all of them?",
    answer: [
      ...intra,
      [
        `Over all ${grades.pooled.length} observers, first readings only (${grades.pooled.map((place) => columnName(page, place)).join(", ")}), Krippendorff's ordinal alpha was ${coefficientText(alpha.ordinal, level)}.`,
      ],
    ],
    cautions: [],
    tables: [
      {
        caption: "Several observers together",
        head: ["Coefficient", "Uses", `Value (${levelText(level)} CI)`],
        rows: [
          row("Fleiss' kappa", complete, fleiss),
          row("Conger's kappa, linear weights", complete, conger),
          row("AC1", counted(ac1.images, "radiograph"), ac1),
          row("AC2, linear weights", counted(ac2.images, "radiograph"), ac2),
          row("Krippendorff's alpha, nominal", counted(alpha.nominal.images, "radiograph"), alpha.nominal),
          row("Krippendorff's alpha, ordinal", counted(alpha.ordinal.images, "radiograph"), alpha.ordinal),
          row("Krippendorff's alpha, interval", counted(alpha.interval.images, "radiograph"), alpha.interval),
        ],
        notes: [
          `Alpha and the pooled kappas: BCa limits from ${grades.resamples} resamples of radiographs, seed ${grades.seed}. AC1 counts every radiograph with a reading.`,
        ],
      },
      ...(fleiss.estimate === null ? [] : [eachGrade(fleiss, grades.grades)]),
    ],
  };
}

/** Which grade are they at one on? */
function eachGrade(fleiss: FleissEstimate, names: readonly string[]): TextTable {
  return {
    caption: "Each grade against all others together",
    head: ["Grade", "Share of readings", "Fleiss' kappa"],
    rows: fleiss.grades.map((one) => [
      names[one.grade]!,
      percentText(one.share, 1),
      one.estimate === null ? `not estimable (${one.because})` : decimalText(one.estimate, 2),
    ]),
    notes: [`${counted(fleiss.images, "complete radiograph")}.`],
  };
}
