import type { Findings } from "../../findings/types.js";
import { counted, levelText, pText, ratioRangeText, ratioText } from "../number-text.js";
import { casesSpan } from "../rate-text.js";
import type { Section } from "../text.js";

const question = "What else could explain it?";

/** What else could explain it? The comparison adjusted for grade, only as far as the failures allow. */
export function whatElse({ adjusted, level }: Findings): Section {
  if ("estimate" in adjusted)
    return {
      id: "else",
      question,
      answer: [[`No adjusted comparison is given: ${adjusted.because}.`]],
      cautions: [],
      tables: [],
    };
  const { oddsRatio, grade, failures, cases } = adjusted;
  return {
    id: "else",
    question,
    answer: [
      [
        `With ${counted(failures, "failure")} among `,
        casesSpan(`${cases.length} cases`, "In the model", cases),
        ` the comparison can be adjusted for grade as a score and for nothing more. So adjusted, the odds ratio of success, closed against open first, is ${ratioText(oddsRatio.estimate)} (${levelText(level)} CI ${ratioRangeText(oddsRatio.interval)}; ${pText(oddsRatio.p)}); one grade more multiplies the odds of success by ${ratioText(grade.estimate)} (${ratioRangeText(grade.interval)}).`,
      ],
    ],
    cautions: [["Age, operator, delay and whatever was not written down are not in this figure."]],
    tables: [
      {
        caption: "Adjusted odds ratios of success",
        head: ["", "Odds ratio", `${levelText(level)} CI`],
        rows: [
          ["Closed first, against open first", ratioText(oddsRatio.estimate), ratioRangeText(oddsRatio.interval)],
          ["One grade more", ratioText(grade.estimate), ratioRangeText(grade.interval)],
        ],
        notes: ["Logistic regression with Firth's penalty; limits and p from the penalised profile likelihood."],
      },
    ],
  };
}
