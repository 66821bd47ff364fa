import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { counted, decimalText, levelText, percentText } from "../../number-text.js";
import type { Section } from "../../text.js";
import { columnName, imagesSpan } from "./page-words.js";

const LISTED = 20;

/** Which grades would change? Null without measurements. */
export function whichChange(page: AgreementPage): Section | null {
  const { regrading, choices, grades } = page;
  if (regrading === null) return null;
  const { chances, images, error } = regrading;
  const { cases } = chances;
  const n = cases.length;
  const range = ({ low, high }: { low: number; high: number }): string => `${low} to ${high}`;
  const near = cases
    .map((each, k) => ({ ...each, image: images[k]! }))
    .filter(({ value }) => choices.cuts.some((cut) => Math.abs(value - cut) <= 1.96 * error));
  const treated = grades.grades[choices.treatedFrom] ?? grades.grades.at(-1)!;
  return {
    id: "change",
    question: "Which grades would change?",
    answer: [
      [
        `Given an error of ${decimalText(error, 1)}, the true value of `,
        imagesSpan(
          page,
          `${near.length} of ${n}`,
          "Within 1.96 errors of a cut-point",
          near.map(({ image }) => image),
        ),
        ` radiographs may lie on the other side of a cut-point (${choices.cuts.join(", ")}).`,
      ],
      [
        `About ${decimalText(chances.grades.expected, 0)} of ${n} grades by ${columnName(page, choices.pair[0])} (${levelText(choices.level)} range ${range(chances.grades.range)}) and ${counted(Math.round(chances.treatments.expected), "treatment")} (${range(chances.treatments.range)}) would be others, if treatment changes from grade ${treated} on.`,
      ],
    ],
    cautions: [["The kit counts what would change; which treatment is right is not its question."]],
    tables: [
      {
        caption: `Radiographs nearest to another grade (at most ${LISTED})`,
        head: ["Radiograph", "Measured", "Grade", "Chance of another grade", "Of another treatment"],
        rows: near
          .toSorted((a, b) => b.changed - a.changed)
          .slice(0, LISTED)
          .map(({ image, value, grade, changed, treatmentChanged }) => {
            const { id } = page.readings.radiographs[image]!;
            return [
              imagesSpan(page, id, "Radiograph", [image]),
              decimalText(value, 0),
              grades.grades[grade]!,
              percentText(changed, 1),
              percentText(treatmentChanged, 1),
            ];
          }),
        notes: [
          `Normal error of ${counted(n, "measurement")} about the true value; a value equal to a cut-point is in the grade below.`,
        ],
      },
    ],
  };
}
