import type { CaseMark } from "./case-mark.js";
import type { RowText } from "./columns-of.js";
import type { Drawing } from "./drawing.js";
import { markRows } from "./mark-rows.js";

/** One proportion: its cases, its estimate with two intervals as fractions, and what is written beside it. */
export interface CaseMarksRow extends RowText {
  readonly marks: readonly CaseMark[];
  /** Null when there is no case to estimate from. */
  readonly estimate: number | null;
  readonly interval: { readonly low: number; readonly high: number };
  /** The 50% interval. */
  readonly inner: { readonly low: number; readonly high: number };
  /** The first of several rows that belong together: more room above it. */
  readonly apart?: boolean;
}

export interface CaseMarksOptions {
  /** Width of the whole picture in pixels; default that of a saved figure. */
  readonly width?: number;
}

/**
 * The picture of the house: for each proportion a row of marks, one a case, filled when it succeeded and an open ring
 * when not, over its 50% interval and the interval of the chosen level. Over 60 cases the marks merge into a bar.
 */
export function caseMarks(rows: readonly CaseMarksRow[], options: CaseMarksOptions = {}): Drawing {
  const axis = { domain: [0, 1], ticks: [0, 0.25, 0.5, 0.75, 1], format: ".0%" } as const;
  return markRows(
    rows.map(({ marks, estimate, interval, inner, ...text }) => ({
      ...text,
      groups: [marks],
      band: estimate === null ? null : { estimate, ...interval, innerLow: inner.low, innerHigh: inner.high },
    })),
    { ...options, axis },
  );
}
