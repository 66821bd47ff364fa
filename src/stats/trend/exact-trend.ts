import { requireOptions } from "../guards.js";
import {
  convolutionCost,
  scoreSumWeights,
  toLattice,
  type Lattice,
  type ScoreSumWeights,
} from "./score-sum-distribution.js";
import { requireTrend } from "./trend-guard.js";
import type { Count } from "../types.js";

export interface ExactTrendResult {
  readonly method: "exact Cochran-Armitage (permutation)";
  readonly groups: readonly Count[];
  readonly scores: readonly number[];
  /** Sum of score times successes. */
  readonly statistic: number;
  /** Two-sided: the statistic's values that are no likelier than the observed one (relative tolerance 1e-7). */
  readonly pointProbability: number;
  /** Two-sided: twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** One-sided: the share of successes rises with the score. */
  readonly rising: number;
  /** One-sided: the share of successes falls with the score. */
  readonly falling: number;
}

/** The exact distribution would take too long. */
export interface ExactTrendTooLarge {
  readonly method: ExactTrendResult["method"];
  readonly groups: readonly Count[];
  readonly scores: readonly number[];
  readonly pointProbability: null;
  readonly doubled: null;
  readonly because: string;
}

/** Multiplications that take about a second. */
const COST_LIMIT = 1.2e9;

/**
 * Exact test for a trend of proportions over ordered groups: the distribution of the score sum over all tables with
 * the same margins, by convolution over the groups.
 *
 * @param groups successes of trials, in order; a group may be empty (0 of 0) and keeps its score
 * @param options.scores one integer a group; default 1, 2, 3, ...
 * @throws RangeError when a count or a score is out of range, or fewer than two groups are given
 * @see Agresti 2002, Categorical Data Analysis, 2nd ed., section 3.5.2 (from memory); Cochran 1954, Biometrics 10:417-451
 * @example exactTrend([{ successes: 3, trials: 3 }, { successes: 0, trials: 3 }]).doubled // => 0.1
 */
export function exactTrend(
  groups: readonly Count[],
  options: { readonly scores?: readonly number[] } = {},
): ExactTrendResult | ExactTrendTooLarge {
  requireOptions("exactTrend", options, ["scores"]);
  const scores = options.scores ?? groups.map((_, i) => i + 1);
  requireTrend("exactTrend", groups, scores);
  scores.forEach((score, i) => {
    if (!Number.isSafeInteger(score))
      throw new RangeError(`exactTrend: scores[${i}] must be an integer (multiply fractions up), got ${score}`);
  });

  const method = "exact Cochran-Armitage (permutation)";
  const lattice = toLattice(groups, scores);
  if (convolutionCost(lattice) > COST_LIMIT)
    return {
      method,
      groups,
      scores,
      pointProbability: null,
      doubled: null,
      because: "the exact distribution is too large to compute; use the asymptotic trend test",
    };
  const statistic = groups.reduce((sum, { successes }, i) => sum + scores[i]! * successes, 0);
  return { method, groups, scores, statistic, ...tails(lattice, scoreSumWeights(lattice)) };
}

function tails(
  { observed, reversed }: Lattice,
  { low, weights }: ScoreSumWeights,
): Pick<ExactTrendResult, "pointProbability" | "doubled" | "rising" | "falling"> {
  const own = weights[observed - low]!;
  let [all, atMost, atLeast, noLikelier] = [0, 0, 0, 0];
  weights.forEach((weight, i) => {
    all += weight;
    if (low + i <= observed) atMost += weight;
    if (low + i >= observed) atLeast += weight;
    if (weight <= own * (1 + 1e-7)) noLikelier += weight;
  });
  return {
    pointProbability: noLikelier / all,
    doubled: Math.min(1, (2 * Math.min(atMost, atLeast)) / all),
    rising: (reversed ? atMost : atLeast) / all,
    falling: (reversed ? atLeast : atMost) / all,
  };
}
