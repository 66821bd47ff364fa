import { requireNumbers, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { midranks } from "./midranks.js";
import { rankTestNormal, type RankTestNormal, type RankTestP } from "./rank-test.js";
import { signedRankDistribution } from "./signed-rank-distribution.js";
import { sumTails } from "./sum-tails.js";

export const zeroTreatments = ["dropped", "ranked"] as const;
/** What becomes of differences of zero: left out before ranking, or ranked and then left out of the sums. */
export type ZeroTreatment = (typeof zeroTreatments)[number];

export interface SignedRank {
  readonly method: "Wilcoxon signed-rank";
  /** "exact" over all sign patterns of the observed ranks, ties included; else the normal approximation, corrected. */
  readonly distribution: "exact" | "normal approximation";
  readonly n: number;
  readonly zeros: { readonly count: number; readonly treatment: ZeroTreatment };
  /** Sum of the ranks of the positive differences. */
  readonly statistic: number;
  readonly ties: readonly number[];
  readonly p: RankTestP;
  readonly normal: RankTestNormal;
}

/** Above this many differences the exact distribution is given up for the normal approximation. */
const mostExact = 400;

/**
 * Wilcoxon signed-rank test of differences against 0, exact with ties.
 *
 * @param differences finite numbers; take them from `pairedDifferences`, so that equal decimals tie
 * @param options.zeros "dropped" (Wilcoxon 1945, the default) or "ranked" (Pratt 1959)
 * @returns the test, or null with the reason when every difference is zero
 * @throws RangeError when there are no differences or one is not finite; TypeError on an unknown option
 * @see Wilcoxon 1945, Biometrics Bulletin 1:80-83; Pratt 1959, J Am Stat Assoc 54:655-667; ties by Streitberg and
 *   Roehmel 1986
 * @example signedRank([1, 2, 3, -4, 5]).statistic // => 11
 */
export function signedRank(
  differences: readonly number[],
  options: { readonly zeros?: ZeroTreatment } = {},
): SignedRank | NotEstimable {
  requireOptions("signedRank", options, ["zeros"]);
  const { zeros: treatment = "dropped" } = options;
  if (!zeroTreatments.includes(treatment))
    throw new TypeError(`signedRank: zeros must be one of ${zeroTreatments.join(", ")}, got ${String(treatment)}`);
  requireNumbers("signedRank", "differences", differences, 1);
  const nonZero = differences.filter((difference) => difference !== 0);
  if (nonZero.length === 0) return { estimate: null, because: "every difference is zero" };

  const entered = treatment === "dropped" ? nonZero : differences;
  const { ranks, ties } = midranks(entered.map(Math.abs));
  const kept = ranks.filter((_, index) => entered[index] !== 0);
  const statistic = ranks.reduce((sum, rank, index) => (entered[index]! > 0 ? sum + rank : sum), 0);
  const normal = approximation(statistic, kept);
  const exact = kept.length <= mostExact ? exactP(statistic, kept) : null;
  return {
    method: "Wilcoxon signed-rank",
    distribution: exact ? "exact" : "normal approximation",
    n: differences.length,
    zeros: { count: differences.length - nonZero.length, treatment },
    statistic,
    ties,
    p: exact ?? normal.corrected,
    normal,
  };
}

function exactP(statistic: number, ranks: readonly number[]): RankTestP {
  const scale = ranks.every(Number.isInteger) ? 1 : 2;
  return sumTails(signedRankDistribution(ranks.map((rank) => scale * rank)), scale * statistic);
}

/** The variance is a quarter of the sum of squared ranks, which holds with ties and with ranked zeros alike. */
function approximation(statistic: number, ranks: readonly number[]): RankTestNormal {
  const mean = ranks.reduce((sum, rank) => sum + rank, 0) / 2;
  const variance = ranks.reduce((sum, rank) => sum + rank * rank, 0) / 4;
  return rankTestNormal({ observed: statistic, mean, variance });
}
