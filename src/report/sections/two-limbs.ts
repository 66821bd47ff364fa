import type { Findings } from "../../findings/types.js";
import { counted, levelText, percentRangeText } from "../number-text.js";
import { countSpan, estimateText, intervalText, rateSpans } from "../rate-text.js";
import type { Section } from "../text.js";
import { unitWords } from "../unit-words.js";

const question = "Two limbs of one child?";

/** Two limbs of one child: the rate when they are not taken for independent. */
export function twoLimbs(findings: Findings): Section {
  const { twoLimbs: found, howOften, level } = findings;
  if ("estimate" in found)
    return { id: "limbs", question, answer: [[`Nothing to allow for: ${found.because}.`]], cautions: [], tables: [] };
  const { many } = unitWords(findings);
  const { overall } = howOften;
  const dependence =
    "interval" in found.fullDependence ? percentRangeText(found.fullDependence.interval, overall.count.trials) : null;
  return {
    id: "limbs",
    question,
    answer: [
      [
        `${counted(found.children, "child", "children")} had more than one of their ${many} analysed. Counting a child as a success only when every one of its ${many} was: `,
        ...rateSpans(found.perChild, "Per child", "children"),
        "; with the first limb of each child only: ",
        ...rateSpans(found.firstLimb, "First limb", "children"),
        dependence === null
          ? "."
          : `. Allowing for full dependence within a child the interval for all ${many} is ${dependence}.`,
      ],
    ],
    cautions: [],
    tables: [
      {
        caption: "Success, by how limbs of one child are counted",
        head: ["", "Succeeded", "Share", `${levelText(level)} CI, %`],
        rows: [
          [
            `All ${many}, taken for independent`,
            countSpan(overall.count, "All analysed"),
            estimateText(overall),
            intervalText(overall),
          ],
          [
            "Per child",
            countSpan(found.perChild.count, "Per child"),
            estimateText(found.perChild),
            intervalText(found.perChild),
          ],
          [
            "First limb of each child",
            countSpan(found.firstLimb.count, "First limb"),
            estimateText(found.firstLimb),
            intervalText(found.firstLimb),
          ],
          ...(dependence === null
            ? []
            : [
                [
                  `All ${many}, fully dependent within a child`,
                  countSpan(overall.count, "All analysed"),
                  estimateText(overall),
                  dependence,
                ],
              ]),
        ],
        notes: ["Wilson intervals; with full dependence on as many cases as there are children."],
      },
    ],
  };
}
