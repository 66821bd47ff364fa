import { requireNumbers } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { midranks } from "./midranks.js";
import { rankSumDistribution } from "./rank-sum-distribution.js";
import { rankTestNormal, type RankTestNormal, type RankTestP } from "./rank-test.js";
import { sumTails } from "./sum-tails.js";

export interface RankSum {
  readonly method: "Wilcoxon rank-sum";
  /** "exact" over all ways to share out the observed ranks, ties included; else the normal approximation, corrected. */
  readonly distribution: "exact" | "normal approximation";
  readonly n: { readonly first: number; readonly second: number };
  /** Pairs in which the first exceeds the second, ties counting one half: the Mann-Whitney form. */
  readonly statistic: number;
  /** `statistic` over the number of pairs: how often a member of the first group exceeds one of the second. */
  readonly probabilityOfSuperiority: number;
  readonly ties: readonly number[];
  readonly p: RankTestP;
  readonly normal: RankTestNormal;
}

/** Additions spent on the exact distribution before the normal approximation takes over: about a third of a second. */
const mostSteps = 3e8;

/**
 * Wilcoxon rank-sum (Mann-Whitney) test of two independent groups, exact with ties.
 *
 * With ties the two-sided conventions differ: `p.doubled` is twice the smaller tail, `p.distance` adds every outcome at
 * least as far from the mean.
 *
 * @param groups.first finite numbers
 * @param groups.second finite numbers
 * @returns the test, or null with the reason when a group is empty or all values are equal
 * @throws RangeError when a value is not finite
 * @see Wilcoxon 1945, Biometrics Bulletin 1:80-83; Mann and Whitney 1947, Ann Math Stat 18:50-60; ties by Streitberg
 *   and Roehmel 1986
 * @example rankSum({ first: [1, 4, 5], second: [2, 3] }).statistic // => 4
 */
export function rankSum(groups: {
  readonly first: readonly number[];
  readonly second: readonly number[];
}): RankSum | NotEstimable {
  const { first, second } = groups;
  requireNumbers("rankSum", "first", first, 0);
  requireNumbers("rankSum", "second", second, 0);
  if (first.length === 0 || second.length === 0)
    return { estimate: null, because: `the ${first.length === 0 ? "first" : "second"} group is empty` };
  const { ranks, ties } = midranks([...first, ...second]);
  if (ties[0] === ranks.length) return { estimate: null, because: "all values are equal" };

  const sum = ranks.slice(0, first.length).reduce((total, rank) => total + rank, 0);
  const statistic = sum - (first.length * (first.length + 1)) / 2;
  const pairs = first.length * second.length;
  const normal = approximation(statistic, { first: first.length, second: second.length }, ties);
  const exact = exactP(sum, ranks, first.length);
  return {
    method: "Wilcoxon rank-sum",
    distribution: exact ? "exact" : "normal approximation",
    n: { first: first.length, second: second.length },
    statistic,
    probabilityOfSuperiority: statistic / pairs,
    ties,
    p: exact ?? normal.corrected,
    normal,
  };
}

/** Null when it would take too long. The smaller group is drawn; its sum tells that of the other. */
function exactP(sum: number, ranks: readonly number[], firstSize: number): RankTestP | null {
  const scale = ranks.every(Number.isInteger) ? 1 : 2;
  const secondSize = ranks.length - firstSize;
  const size = Math.min(firstSize, secondSize);
  if ((ranks.length * size * scale * firstSize * secondSize) / 3 > mostSteps) return null;
  const distribution = rankSumDistribution(
    ranks.map((rank) => scale * rank),
    size,
  );
  if (firstSize <= secondSize) return sumTails(distribution, scale * sum);
  const total = (ranks.length * (ranks.length + 1)) / 2;
  const { less, greater, doubled, distance } = sumTails(distribution, scale * (total - sum));
  return { less: greater, greater: less, doubled, distance };
}

function approximation(
  statistic: number,
  n: { readonly first: number; readonly second: number },
  ties: readonly number[],
): RankTestNormal {
  const all = n.first + n.second;
  const tied = ties.reduce((sum, size) => sum + (size ** 3 - size), 0);
  const variance = ((n.first * n.second) / 12) * (all + 1 - tied / (all * (all - 1)));
  return rankTestNormal({ observed: statistic, mean: (n.first * n.second) / 2, variance });
}
