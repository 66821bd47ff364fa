import { requireLevel, requireNumbers, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { signedRankTail } from "./null-tails.js";
import { orderLimits } from "./order-limits.js";

export interface HodgesLehmannPaired {
  readonly method: "Hodges-Lehmann, paired";
  /** "exact" signed-rank distribution, or its normal approximation for many differences. */
  readonly distribution: "exact" | "normal approximation";
  readonly n: number;
  readonly level: number;
  /** Median of the Walsh averages, the means of every pair of differences and of each with itself. */
  readonly estimate: number;
  /** Two Walsh averages; open on both sides when even the extremes cover less than the level. */
  readonly interval: Interval;
  /** Coverage reached, at least `level`; with ties the true coverage is larger. */
  readonly achieved: number;
  /** Why the interval is open. */
  readonly because?: string;
}

/** Walsh averages that are sorted at most: 2,500 differences. */
const mostDifferences = 2500;

/**
 * Typical difference within pairs (Hodges-Lehmann) with limits by inversion of the signed-rank test.
 *
 * Zeros and ties stay in: the closed interval then covers at least as often as stated.
 *
 * @param differences finite numbers, 1 to 2500 of them
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there are none or too many, one is not finite, or the level is out of range
 * @see Hodges and Lehmann 1963, Ann Math Stat 34:598-611; limits after Tukey as in Hollander and Wolfe 1973, section 3.3
 * @example hodgesLehmannPaired([1, 2, 4, 8, 16, 32]).estimate // => 8.5
 */
export function hodgesLehmannPaired(
  differences: readonly number[],
  options: { readonly level?: number } = {},
): HodgesLehmannPaired {
  requireOptions("hodgesLehmannPaired", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("hodgesLehmannPaired", level);
  requireNumbers("hodgesLehmannPaired", "differences", differences, 1);
  const n = differences.length;
  if (n > mostDifferences)
    throw new RangeError(`hodgesLehmannPaired: differences must number ${mostDifferences} at most, got ${n}`);
  const walsh = walshAverages(differences);
  const { distribution, tail } = signedRankTail(n);
  const { rank, interval, achieved } = orderLimits(walsh, { level, tail });
  const half = walsh.length >> 1;
  return {
    method: "Hodges-Lehmann, paired",
    distribution,
    n,
    level,
    estimate: walsh.length % 2 === 1 ? walsh[half]! : (walsh[half - 1]! + walsh[half]!) / 2,
    interval,
    achieved,
    ...(rank === 0 && {
      because: `no interval covers as much as the level with ${n} difference${n === 1 ? "" : "s"}`,
    }),
  };
}

function walshAverages(differences: readonly number[]): Float64Array {
  const n = differences.length;
  const averages = new Float64Array((n * (n + 1)) / 2);
  let at = 0;
  for (let i = 0; i < n; i++) for (let j = i; j < n; j++) averages[at++] = (differences[i]! + differences[j]!) / 2;
  return averages.sort();
}
