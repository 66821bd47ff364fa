import { normalCdf } from "../../numeric/normal.js";
import { rankSumDistribution } from "./rank-sum-distribution.js";
import { signedRankDistribution } from "./signed-rank-distribution.js";
import type { SumDistribution } from "./sum-tails.js";

/** Lower tail of a rank statistic without ties, as a function of its value. */
export interface NullTail {
  readonly distribution: "exact" | "normal approximation";
  readonly tail: (count: number) => number;
}

const mostDifferences = 400;
/** Additions spent on the exact rank-sum distribution: about a third of a second. */
const mostSteps = 3e8;

/** Null distribution of the signed-rank statistic of n differences: exact to 400, then normal, corrected. */
export function signedRankTail(n: number): NullTail {
  if (n > mostDifferences) return normalTail((n * (n + 1)) / 4, (n * (n + 1) * (2 * n + 1)) / 24);
  return exactTail(signedRankDistribution(oneTo(n)));
}

/** Null distribution of the Mann-Whitney count: exact while that takes well under a second, then normal, corrected. */
export function rankSumTail(first: number, second: number): NullTail {
  const all = first + second;
  const size = Math.min(first, second);
  if ((all * size * first * second) / 3 > mostSteps)
    return normalTail((first * second) / 2, (first * second * (all + 1)) / 12);
  return exactTail(rankSumDistribution(oneTo(all), size));
}

const oneTo = (n: number): number[] => Array.from({ length: n }, (_, index) => index + 1);

/** Counted from the smallest sum, which is 0 for signed ranks and the Mann-Whitney count 0 for rank sums. */
function exactTail({ probabilities }: SumDistribution): NullTail {
  const cumulative = new Float64Array(probabilities.length);
  let sum = 0;
  for (let at = 0; at < cumulative.length; at++) cumulative[at] = sum += probabilities[at]!;
  return { distribution: "exact", tail: (count) => cumulative[count]! };
}

function normalTail(mean: number, variance: number): NullTail {
  return {
    distribution: "normal approximation",
    tail: (count) => normalCdf((count + 0.5 - mean) / Math.sqrt(variance)),
  };
}
