import { requireInteger, requireNotNegative } from "./guards.js";
import { incompleteGamma } from "./incomplete-gamma.js";
import { poissonMass } from "./poisson-mass.js";
import { allAbove, type Tails } from "./tails.js";

/**
 * P(X = k) of a Poisson X.
 *
 * @param k integer; below 0 the mass is 0
 * @param mean zero or more
 * @throws RangeError when an argument is out of range
 * @see Loader 2000, Fast and accurate computation of binomial probabilities
 * @example poissonPmf(2, 3) // => 0.224041807655
 */
export function poissonPmf(k: number, mean: number): number {
  check("poissonPmf", k, mean);
  return poissonMass(k, mean);
}

/**
 * P(X <= k) of a Poisson X.
 *
 * @param k integer
 * @param mean zero or more
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.4.10
 * @example poissonCdf(2, 3) // => 0.42319008112684
 */
export function poissonCdf(k: number, mean: number): number {
  check("poissonCdf", k, mean);
  return tails(k, mean).lower;
}

/**
 * P(X > k) of a Poisson X, to full precision when small.
 *
 * @param k integer
 * @param mean zero or more
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.4.10
 * @example poissonUpper(2, 3) // => 0.57680991887316
 */
export function poissonUpper(k: number, mean: number): number {
  check("poissonUpper", k, mean);
  return tails(k, mean).upper;
}

function tails(k: number, mean: number): Tails {
  if (k < 0) return allAbove;
  const { lower, upper } = incompleteGamma(k + 1, mean);
  return { lower: upper, upper: lower };
}

function check(caller: string, k: number, mean: number): void {
  requireInteger(caller, "k", k);
  requireNotNegative(caller, "mean", mean);
}
