import { binomialCdf } from "../../numeric/binomial.js";
import { requireLevel, requireNumbers, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { orderLimits } from "./order-limits.js";

export interface MedianInterval {
  readonly method: "median with the exact sign-test interval";
  readonly n: number;
  readonly level: number;
  readonly estimate: number;
  /** Two of the values; open on both sides when even the extremes cover less than the level. */
  readonly interval: Interval;
  /** 1-based ranks of the limits, null when they are open. */
  readonly ranks: { readonly low: number; readonly high: number } | null;
  /** Coverage reached, at least `level`, whatever the distribution. */
  readonly achieved: number;
  /** Why the interval is open. */
  readonly because?: string;
}

/**
 * Median with the exact distribution-free interval between two order statistics.
 *
 * @param values finite numbers, at least one
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there is no value, one is not finite, or the level is out of range
 * @see Thompson 1936, Ann Math Stat 7:122-128; Campbell and Gardner 1988, BMJ 296:1454-1456
 * @example medianInterval([3, 1, 4, 1, 5, 9, 2, 6, 5, 3]).interval // => { low: 1, high: 6 }
 */
export function medianInterval(values: readonly number[], options: { readonly level?: number } = {}): MedianInterval {
  requireOptions("medianInterval", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("medianInterval", level);
  requireNumbers("medianInterval", "values", values, 1);
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  const tail = (count: number): number => binomialCdf(count, { trials: n, probability: 0.5 });
  const { rank, interval, achieved } = orderLimits(sorted, { level, tail });
  const open = rank === 0;
  return {
    method: "median with the exact sign-test interval",
    n,
    level,
    estimate: middleOf(sorted),
    interval,
    ranks: open ? null : { low: rank, high: n + 1 - rank },
    achieved,
    ...(open && { because: `no pair of ranks covers as much as the level with ${n} value${n === 1 ? "" : "s"}` }),
  };
}

function middleOf(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : sorted[half - 1]! / 2 + sorted[half]! / 2;
}
