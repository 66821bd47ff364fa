import type { BandedRate, CardFindings } from "../../../findings/series/series-findings.js";
import { bandText, countText } from "../../../report/series/series-text.js";
import type { NotEstimable } from "../../../stats/types.js";
import type { CaseMarksRow } from "../../case-marks.js";

const none = { low: 0, high: 0 };

/** One published rate as a row: a mark a case, dashed where success is not known to be ours. */
export function seriesRow(label: string, rate: BandedRate | NotEstimable, one: CardFindings): CaseMarksRow {
  if (rate.estimate === null)
    return {
      label,
      count: countText(rate),
      note: rate.because,
      marks: [],
      estimate: null,
      interval: none,
      inner: none,
    };
  const supposed = one.card.match === "same as ours" ? {} : { supposed: true };
  const marks = Array.from({ length: rate.cases }, (_, i) => ({
    outcome: i < rate.successes ? ("success" as const) : ("failure" as const),
    ...supposed,
  }));
  return {
    label,
    count: countText(rate),
    note: bandText(rate),
    marks,
    estimate: rate.estimate,
    interval: rate.interval,
    inner: rate.inner,
  };
}
