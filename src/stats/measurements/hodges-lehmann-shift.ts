import { requireLevel, requireNumbers, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { rankSumTail } from "./null-tails.js";
import { orderLimits } from "./order-limits.js";

export interface HodgesLehmannShift {
  readonly method: "Hodges-Lehmann shift";
  /** "exact" rank-sum distribution, or its normal approximation for large groups. */
  readonly distribution: "exact" | "normal approximation";
  readonly n: { readonly first: number; readonly second: number };
  readonly level: number;
  /** Median of all differences first minus second. */
  readonly estimate: number;
  /** Two of the differences; open on both sides when even the extremes cover less than the level. */
  readonly interval: Interval;
  /** Coverage reached, at least `level`; with ties the true coverage is larger. */
  readonly achieved: number;
  /** Why the interval is open. */
  readonly because?: string;
}

/** Differences that are sorted at most: 2,000 against 2,000. */
const mostPairs = 4e6;

/**
 * Shift between two independent groups, first minus second (Hodges-Lehmann), with limits by inversion of the rank-sum
 * test. Ties stay in: the closed interval then covers at least as often as stated.
 *
 * @param groups.first finite numbers
 * @param groups.second finite numbers
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the estimate, or null with the reason when a group is empty
 * @throws RangeError when a value is not finite, the groups make more than 4 million pairs, or the level is out of range
 * @see Hodges and Lehmann 1963, Ann Math Stat 34:598-611; limits after Moses as in Hollander and Wolfe 1973, section 4.3
 * @example hodgesLehmannShift({ first: [5, 6, 9], second: [1, 2] }).estimate // => 4.5
 */
export function hodgesLehmannShift(
  groups: { readonly first: readonly number[]; readonly second: readonly number[] },
  options: { readonly level?: number } = {},
): HodgesLehmannShift | NotEstimable {
  requireOptions("hodgesLehmannShift", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("hodgesLehmannShift", level);
  const { first, second } = groups;
  requireNumbers("hodgesLehmannShift", "first", first, 0);
  requireNumbers("hodgesLehmannShift", "second", second, 0);
  const pairs = first.length * second.length;
  if (pairs > mostPairs)
    throw new RangeError(`hodgesLehmannShift: groups must make ${mostPairs} pairs at most, got ${pairs}`);
  if (pairs === 0) return { estimate: null, because: `the ${first.length === 0 ? "first" : "second"} group is empty` };

  const differences = allDifferences(first, second);
  const { distribution, tail } = rankSumTail(first.length, second.length);
  const { rank, interval, achieved } = orderLimits(differences, { level, tail });
  const half = pairs >> 1;
  return {
    method: "Hodges-Lehmann shift",
    distribution,
    n: { first: first.length, second: second.length },
    level,
    estimate: pairs % 2 === 1 ? differences[half]! : (differences[half - 1]! + differences[half]!) / 2,
    interval,
    achieved,
    ...(rank === 0 && {
      because: `no interval covers as much as the level with groups of ${first.length} and ${second.length}`,
    }),
  };
}

function allDifferences(first: readonly number[], second: readonly number[]): Float64Array {
  const differences = new Float64Array(first.length * second.length);
  let at = 0;
  for (const a of first) for (const b of second) differences[at++] = a - b;
  return differences.sort();
}
