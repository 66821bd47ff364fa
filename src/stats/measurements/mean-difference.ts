import { requireLevel, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { meanAndVariance, requireSquares, type MeanAndVariance } from "./mean-and-variance.js";
import { tResult, type TResult } from "./t-result.js";

export interface MeanDifference {
  readonly method: "difference of means";
  readonly level: number;
  readonly first: MeanAndVariance;
  readonly second: MeanAndVariance;
  /** Mean of the first less mean of the second. */
  readonly estimate: number;
  /** Without assuming equal variances. */
  readonly welch: TResult | NotEstimable;
  /** Assuming equal variances. */
  readonly pooled: TResult | NotEstimable;
}

/**
 * Difference of two means with t limits, by Welch's method and with a pooled variance.
 *
 * @param groups.first finite numbers
 * @param groups.second finite numbers
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the difference; `welch` or `pooled` is null with the reason when the data leave it undefined
 * @throws RangeError when a value is not finite or above 1e150 in size, or the level is out of range
 * @see Student 1908, Biometrika 6:1-25; Welch 1947, Biometrika 34:28-35
 * @example meanDifference({ first: [1, 2, 3], second: [2, 4, 6] }).estimate // => -2
 */
export function meanDifference(
  groups: { readonly first: readonly number[]; readonly second: readonly number[] },
  options: { readonly level?: number } = {},
): MeanDifference | NotEstimable {
  requireOptions("meanDifference", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("meanDifference", level);
  requireSquares("meanDifference", "first", groups.first, 0);
  requireSquares("meanDifference", "second", groups.second, 0);
  for (const name of ["first", "second"] as const)
    if (groups[name].length === 0) return { estimate: null, because: `the ${name} group is empty` };
  const first = meanAndVariance(groups.first);
  const second = meanAndVariance(groups.second);
  const estimate = first.mean - second.mean;
  return {
    method: "difference of means",
    level,
    first,
    second,
    estimate,
    welch: welch(estimate, first, second, level),
    pooled: pooled(estimate, first, second, level),
  };
}

function welch(estimate: number, a: MeanAndVariance, b: MeanAndVariance, level: number): TResult | NotEstimable {
  if (a.variance === null || b.variance === null)
    return { estimate: null, because: "a group of one value has no variance" };
  const va = a.variance / a.n;
  const vb = b.variance / b.n;
  const df = (va + vb) ** 2 / (va ** 2 / (a.n - 1) + vb ** 2 / (b.n - 1));
  return tResult(estimate, { standardError: Math.sqrt(va + vb), df, level });
}

function pooled(estimate: number, a: MeanAndVariance, b: MeanAndVariance, level: number): TResult | NotEstimable {
  const df = a.n + b.n - 2;
  if (df === 0) return { estimate: null, because: "two groups of one value each have no variance" };
  const sumOfSquares = (a.variance ?? 0) * (a.n - 1) + (b.variance ?? 0) * (b.n - 1);
  return tResult(estimate, { standardError: Math.sqrt((sumOfSquares / df) * (1 / a.n + 1 / b.n)), df, level });
}
