import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { gammaQuantileOf } from "./gamma-quantile.js";
import { incompleteGamma } from "./incomplete-gamma.js";

/**
 * P(X <= x) of a chi-square X.
 *
 * @param x any number
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.2.4 at df/2, x/2
 * @example chiSquareCdf(2, 2) // => 0.632120558829
 */
export function chiSquareCdf(x: number, df: number): number {
  check("chiSquareCdf", x, df);
  return incompleteGamma(df / 2, x / 2).lower;
}

/**
 * P(X > x) of a chi-square X, to full precision when small: the p value of a chi-square test.
 *
 * @param x any number
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.2.4 at df/2, x/2
 * @example chiSquareUpper(2, 2) // => 0.367879441171
 */
export function chiSquareUpper(x: number, df: number): number {
  check("chiSquareUpper", x, df);
  return incompleteGamma(df / 2, x / 2).upper;
}

/**
 * The x that a chi-square X stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @example chiSquareQuantile(0.95, 1) // => 3.84145882069
 */
export function chiSquareQuantile(p: number, df: number): number {
  requireProbability("chiSquareQuantile", "p", p);
  requirePositive("chiSquareQuantile", "df", df);
  return 2 * gammaQuantileOf(p, 1 - p, df / 2);
}

/**
 * The x that a chi-square X exceeds with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @example chiSquareUpperQuantile(0.05, 1) // => 3.84145882069
 */
export function chiSquareUpperQuantile(q: number, df: number): number {
  requireProbability("chiSquareUpperQuantile", "q", q);
  requirePositive("chiSquareUpperQuantile", "df", df);
  return 2 * gammaQuantileOf(1 - q, q, df / 2);
}

function check(caller: string, x: number, df: number): void {
  requireNumber(caller, "x", x);
  requirePositive(caller, "df", df);
}
