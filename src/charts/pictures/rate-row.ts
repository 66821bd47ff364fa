import type { Rate } from "../../findings/types.js";
import { estimateText, intervalText } from "../../report/rate-text.js";
import type { CaseMark } from "../case-mark.js";
import type { CaseMarksRow } from "../case-marks.js";

/** Marks of a count: those that succeeded first, then the failures, then those still asked, dashed. */
export function marksOf({ count }: Rate, look: (id: string) => Partial<CaseMark> = () => ({})): CaseMark[] {
  const marks = (ids: readonly string[], outcome: CaseMark["outcome"], supposed = false): CaseMark[] =>
    ids.map((id) => ({ outcome, id, ...(supposed ? { supposed } : {}), ...look(id) }));
  return [
    ...marks(count.succeeded, "success"),
    ...marks(count.failed, "failure"),
    ...marks(count.asked, "failure", true),
  ];
}

/** One rate as a row of the house's picture. */
export function rateRow(label: string, rate: Rate, look?: (id: string) => Partial<CaseMark>): CaseMarksRow {
  const none = { low: 0, high: 0 };
  return {
    label,
    count: `${rate.count.successes} of ${rate.count.trials}`,
    note: noteOf(rate),
    marks: marksOf(rate, look),
    estimate: rate.estimate,
    interval: rate.wilson ?? none,
    inner: rate.wilson50 ?? none,
  };
}

/** "94% (74 to 99)". */
export function noteOf(rate: Rate): string {
  const interval = intervalText(rate);
  return interval === "" ? estimateText(rate) : `${estimateText(rate)} (${interval})`;
}
