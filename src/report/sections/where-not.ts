import type { Findings } from "../../findings/types.js";
import { casesSpan, countSpan, estimateText, intervalText, rateSpans } from "../rate-text.js";
import { levelText } from "../number-text.js";
import type { Paragraph, Section } from "../text.js";
import { unitWords } from "../unit-words.js";

const question = "Where does it not work?";

/** Where does it not work? Subgroups named in the plan, exploratory. */
export function whereNot(findings: Findings): Section {
  const { subgroups, level } = findings;
  if (subgroups.length === 0)
    return {
      id: "where",
      question,
      answer: [["The plan names no subgroup, and none is looked for afterwards."]],
      cautions: [],
      tables: [],
    };
  const { many } = unitWords(findings);
  const lines = subgroups.map(({ name, inside, outside, notKnown }): Paragraph => [
    `${name[0]!.toUpperCase()}${name.slice(1)}: `,
    ...(inside.count.trials === 0 ? ["no case"] : rateSpans(inside, name)),
    ", against ",
    ...(outside.count.trials === 0 ? ["no other case"] : rateSpans(outside, `Not: ${name}`)),
    " otherwise",
    ...(notKnown.length === 0
      ? ["."]
      : ["; not known for ", casesSpan(String(notKnown.length), `Not known: ${name}`, notKnown), "."]),
  ]);
  return {
    id: "where",
    question,
    answer: lines,
    cautions: [["Exploratory: subgroups this small show where to look next, not what to do."]],
    tables: [
      {
        caption: `Success in the subgroups of the plan (${many}), exploratory`,
        head: [
          "Subgroup",
          "Succeeded inside",
          "Share",
          `${levelText(level)} CI, %`,
          "Succeeded outside",
          "Share",
          `${levelText(level)} CI, %`,
        ],
        rows: subgroups.map(({ name, inside, outside }) => [
          name,
          countSpan(inside.count, name),
          estimateText(inside),
          intervalText(inside),
          countSpan(outside.count, `Not: ${name}`),
          estimateText(outside),
          intervalText(outside),
        ]),
        notes: ["Wilson intervals. No subgroup was tested."],
      },
    ],
  };
}
