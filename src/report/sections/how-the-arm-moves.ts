import type { Findings, MotionLoss } from "../../findings/types.js";
import { decimalText, levelText } from "../number-text.js";
import { casesSpan } from "../rate-text.js";
import type { Paragraph, Section, TextTable } from "../text.js";

const question = "How does the arm move?";

/** How does the arm move? Loss against the other side, bilateral children apart. */
export function howTheArmMoves(findings: Findings): Section {
  const { arm, level } = findings;
  if ("estimate" in arm)
    return { id: "arm", question, answer: [[`This cannot be shown: ${arm.because}.`]], cautions: [], tables: [] };
  return {
    id: "arm",
    question,
    answer: [answer(arm, level), ...apart(arm)],
    cautions: [["The other side is taken for what the arm was like before; nobody measured that."]],
    tables: [table(arm)],
  };
}

function answer({ name, loss, pairs }: MotionLoss, level: number): Paragraph {
  if ("estimate" in loss) return [`No loss of ${name} can be given: ${loss.because}.`];
  const { median, interval, q1, q3, low, high } = loss;
  const ends =
    Number.isFinite(interval.low) && Number.isFinite(interval.high)
      ? `${levelText(level)} CI ${numberText(interval.low)} to ${numberText(interval.high)}; `
      : "";
  return [
    `The median loss of ${name} against the other side was ${numberText(median)} (${ends}quartiles ${numberText(q1)} and ${numberText(q3)}; range ${numberText(low)} to ${numberText(high)}) in `,
    casesSpan(
      `${pairs.length} children`,
      "Both sides measured",
      pairs.map(({ id }) => id),
    ),
    " injured on one side.",
  ];
}

function apart({ bilateral, notMeasured }: MotionLoss): Paragraph[] {
  const lines: Paragraph[] = [];
  if (bilateral.length > 0)
    lines.push([
      casesSpan(String(bilateral.length), "Both sides injured", bilateral),
      " limbs belong to children injured on both sides, who have no other side to compare with.",
    ]);
  if (notMeasured.length > 0)
    lines.push([
      casesSpan(String(notMeasured.length), "Not measured", notMeasured),
      " were not measured on both sides.",
    ]);
  return lines;
}

function table({ name, byGrade }: MotionLoss): TextTable {
  return {
    caption: `Loss of ${name} against the other side, by grade`,
    head: ["Grade", "Measured", "Median", "Range"],
    rows: byGrade.map(({ grade, cases, summary }) => [
      grade,
      casesSpan(String(cases.length), `Measured, grade ${grade}`, cases),
      summary === null ? "" : numberText(summary.median),
      summary === null ? "" : `${numberText(summary.low)} to ${numberText(summary.high)}`,
    ]),
    notes: [
      "In the unit of the sheet; a negative loss means more motion than on the other side. The interval of the median is exact (sign test); quartiles by linear interpolation.",
    ],
  };
}

/** A whole number as it is, others to one decimal. */
export function numberText(value: number): string {
  return decimalText(value, Number.isInteger(value) ? 0 : 1);
}
