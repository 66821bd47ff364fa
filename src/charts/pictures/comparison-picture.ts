import type { Comparison, Contrast } from "../../findings/types.js";
import { decimalText, levelText } from "../../report/number-text.js";
import { unitWords } from "../../report/unit-words.js";
import { comparison, type ComparisonRow } from "../comparison.js";
import type { PictureMaker } from "../section-pictures.js";
import { marksOf } from "./rate-row.js";

/** Closed over open in each grade with the band of their difference, crude above, over the grades below. */
export const comparisonPicture: PictureMaker = (findings) => {
  const compared = findings.comparison;
  if ("estimate" in compared) return null;
  const rows = [
    row("All, crude", compared.crude),
    ...compared.grades.map((grade) => row(`Grade ${grade.grade}`, grade)),
    overGrades(compared),
  ];
  return {
    name: "closed-against-open",
    caption: `Each mark is one ${unitWords(findings).one}, filled where treatment succeeded. Bands: difference in percentage points, closed less open, with 50% and ${levelText(findings.level)} intervals (Newcombe; over grades Mantel-Haenszel).`,
    drawing: (width) =>
      comparison(
        rows,
        { closed: "closed first", open: "open first", axis: "closed less open, percentage points" },
        width === undefined ? {} : { width },
      ),
  };
};

function row(label: string, { closed, open, difference }: Contrast): ComparisonRow {
  const of = (technique: "closed" | "open") => () => ({ technique });
  const counts = `${closed.count.successes}/${closed.count.trials} v ${open.count.successes}/${open.count.trials}`;
  const text = { label, count: counts, first: marksOf(closed, of("closed")), second: marksOf(open, of("open")) };
  if (difference.estimate === null) return { ...text, note: "no comparison", difference: null };
  const { estimate, newcombe, newcombe50 } = difference;
  return {
    ...text,
    note: pointsText(estimate, newcombe),
    difference: { estimate, interval: newcombe, inner: newcombe50 },
  };
}

function overGrades({ mantelHaenszel }: Comparison): ComparisonRow {
  const empty = { label: "Over grades", count: "", first: [], second: [] };
  if (!("difference" in mantelHaenszel)) return { ...empty, note: "no comparison", difference: null };
  const { difference: estimate, differenceInterval: interval, differenceInterval50: inner } = mantelHaenszel;
  if (estimate === null || interval === null || inner === null)
    return { ...empty, note: "no comparison", difference: null };
  return { ...empty, note: pointsText(estimate, interval), difference: { estimate, interval, inner } };
}

function pointsText(estimate: number, { low, high }: { readonly low: number; readonly high: number }): string {
  const points = (value: number): string => decimalText(value * 100, 0);
  return `${points(estimate)} (${points(low)} to ${points(high)})`;
}
