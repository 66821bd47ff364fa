import type { Interval } from "../types.js";

/** Two order statistics as limits: which ones, what they are, and how often such limits cover. */
export interface OrderLimits {
  /** 1-based from either end: limits are the `rank`-th smallest and `rank`-th largest. 0 when no pair covers enough. */
  readonly rank: number;
  readonly interval: Interval;
  /** Coverage reached, at least the level asked for; 1 for open ends. */
  readonly achieved: number;
}

/**
 * The narrowest pair of order statistics, equally far from both ends, that covers with at least the level.
 *
 * @param sorted values, smallest first
 * @param options.level coverage asked for
 * @param options.tail probability, under the null distribution, of a count no larger than the given one: the limits at
 *   rank r leave out 2 * tail(r - 1)
 * @example orderLimits([1, 2, 3], { level: 0.5, tail: (count) => [0.125, 0.5, 0.875, 1][count] }).rank // => 1
 */
export function orderLimits(
  sorted: ArrayLike<number>,
  options: { readonly level: number; readonly tail: (count: number) => number },
): OrderLimits {
  const { level, tail } = options;
  const allowed = (1 - level) / 2;
  let rank = 0;
  let last = Math.floor((sorted.length + 1) / 2);
  // The tail rises with the rank: bisect for the last rank whose tail is still allowed.
  while (rank < last) {
    const middle = Math.ceil((rank + last) / 2);
    // A tail equal to what is allowed but for rounding is allowed.
    if (tail(middle - 1) <= allowed * (1 + 1e-12)) rank = middle;
    else last = middle - 1;
  }
  if (rank === 0) return { rank, interval: { low: -Infinity, high: Infinity }, achieved: 1 };
  const interval = { low: sorted[rank - 1]!, high: sorted[sorted.length - rank]! };
  return { rank, interval, achieved: 1 - 2 * tail(rank - 1) };
}
