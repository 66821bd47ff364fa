import { requireLevel, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { meanAndVariance, requireSquares } from "./mean-and-variance.js";
import { tResult, type TResult } from "./t-result.js";

export interface PairedMeanDifference {
  readonly method: "mean of paired differences";
  readonly n: number;
  readonly level: number;
  readonly estimate: number;
  /** Sample standard deviation of the differences; null for one. */
  readonly standardDeviation: number | null;
  readonly student: TResult | NotEstimable;
}

/**
 * Mean of differences within pairs with t limits.
 *
 * @param differences finite numbers, at least one; see `pairedDifferences`
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the mean; `student` is null with the reason for one difference or equal ones
 * @throws RangeError when there is none, one is not finite or above 1e150 in size, or the level is out of range
 * @see Student 1908, Biometrika 6:1-25
 * @example pairedMeanDifference([1, 2, 3, 6]).estimate // => 3
 */
export function pairedMeanDifference(
  differences: readonly number[],
  options: { readonly level?: number } = {},
): PairedMeanDifference {
  requireOptions("pairedMeanDifference", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("pairedMeanDifference", level);
  requireSquares("pairedMeanDifference", "differences", differences, 1);
  const { n, mean, variance } = meanAndVariance(differences);
  const student: TResult | NotEstimable =
    variance === null
      ? { estimate: null, because: "one difference has no variance" }
      : tResult(mean, { standardError: Math.sqrt(variance / n), df: n - 1, level });
  return {
    method: "mean of paired differences",
    n,
    level,
    estimate: mean,
    standardDeviation: variance === null ? null : Math.sqrt(variance),
    student,
  };
}
