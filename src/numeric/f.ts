import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { incompleteBeta } from "./incomplete-beta.js";
import { logitQuantile } from "./logit-quantile.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

/** Degrees of freedom of an F distribution, of the numerator and of the denominator: both positive, whole or not. */
export interface FDegrees {
  readonly df1: number;
  readonly df2: number;
}

/**
 * P(X <= x) of Snedecor's F.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22 (through the incomplete beta function)
 * @example fCdf(3, { df1: 2, df2: 10 }) // => 0.9046325683594
 */
export function fCdf(x: number, degrees: FDegrees): number {
  return tails("fCdf", x, degrees).lower;
}

/**
 * P(X > x) of Snedecor's F, to full precision when small: the p value of an F test.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22 (through the incomplete beta function)
 * @example fUpper(3, { df1: 2, df2: 10 }) // => 0.0953674316406
 */
export function fUpper(x: number, degrees: FDegrees): number {
  return tails("fUpper", x, degrees).upper;
}

/**
 * The x that Snedecor's F stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example fQuantile(0.95, { df1: 2, df2: 10 }) // => 4.102821
 */
export function fQuantile(p: number, degrees: FDegrees): number {
  requireProbability("fQuantile", "p", p);
  return quantile("fQuantile", p, 1 - p, degrees);
}

/**
 * The x that Snedecor's F exceeds with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example fUpperQuantile(0.05, { df1: 2, df2: 10 }) // => 4.102821
 */
export function fUpperQuantile(q: number, degrees: FDegrees): number {
  requireProbability("fUpperQuantile", "q", q);
  return quantile("fUpperQuantile", 1 - q, q, degrees);
}

function quantile(caller: string, p: number, q: number, { df1, df2 }: FDegrees): number {
  check(caller, df1, df2);
  if (p === 0) return 0;
  if (q === 0) return Infinity;
  return (df2 / df1) * Math.exp(logitQuantile(p, q, df1 / 2, df2 / 2));
}

function tails(caller: string, x: number, { df1, df2 }: FDegrees): Tails {
  requireNumber(caller, "x", x);
  check(caller, df1, df2);
  if (x <= 0) return allAbove;
  const odds = (df1 / df2) * x;
  if (odds === Infinity) return allBelow;
  return incompleteBeta(odds / (1 + odds), 1 / (1 + odds), df1 / 2, df2 / 2);
}

function check(caller: string, df1: number, df2: number): void {
  requirePositive(caller, "df1", df1);
  requirePositive(caller, "df2", df2);
}
