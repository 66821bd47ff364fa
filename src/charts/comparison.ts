import type { CaseMark, MarkTechnique } from "./case-mark.js";
import type { RowText } from "./columns-of.js";
import type { Drawing } from "./drawing.js";
import { markRows } from "./mark-rows.js";
import { keyOf } from "./techniques-by-grade.js";

/** Two groups of cases and the difference of their rates (first minus second) as fractions. */
export interface ComparisonRow extends RowText {
  /** Both empty in a row that sums up others. */
  readonly first: readonly CaseMark[];
  readonly second: readonly CaseMark[];
  /** Null where there is nothing to compare. */
  readonly difference: {
    readonly estimate: number;
    readonly interval: { readonly low: number; readonly high: number };
    readonly inner: { readonly low: number; readonly high: number };
  } | null;
}

/** Two techniques in each grade: both rows of cases over the band of their difference, and no difference marked upright. */
export function comparison(
  rows: readonly ComparisonRow[],
  text: Readonly<Partial<Record<MarkTechnique, string>>> & { readonly axis: string },
  options: { readonly width?: number } = {},
): Drawing {
  const axis = { domain: [-1, 1], ticks: [-1, -0.5, 0, 0.5, 1], format: "+.0f", points: true, reference: 0 } as const;
  return markRows(
    rows.map(({ first, second, difference, ...rest }) => ({
      ...rest,
      groups: [first, second].filter((group) => group.length > 0),
      band: difference && {
        estimate: difference.estimate,
        ...difference.interval,
        innerLow: difference.inner.low,
        innerHigh: difference.inner.high,
      },
    })),
    { ...options, axis: { ...axis, title: text.axis }, key: keyOf(text) },
  );
}
