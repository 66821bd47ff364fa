import type { SumDistribution } from "./sum-tails.js";

/**
 * Exact null distribution of a sum over ranks, each counted with probability one half: the shift algorithm.
 *
 * @param ranks positive integers (twice the midranks when there are ties)
 * @see Streitberg and Roehmel 1986, Statistical Software Newsletter 12:10-17; for signed ranks also Hollander and
 *   Wolfe 1973, section 3.1
 * @example signedRankDistribution([1, 2]).probabilities // => [0.25, 0.25, 0.25, 0.25]
 */
export function signedRankDistribution(ranks: readonly number[]): SumDistribution {
  const total = ranks.reduce((sum, rank) => sum + rank, 0);
  const probabilities = new Float64Array(total + 1);
  probabilities[0] = 1;
  let reached = 0;
  for (const rank of ranks) {
    reached += rank;
    for (let sum = reached; sum >= 0; sum--)
      probabilities[sum] = 0.5 * (probabilities[sum]! + (sum >= rank ? probabilities[sum - rank]! : 0));
  }
  return { smallest: 0, probabilities };
}
