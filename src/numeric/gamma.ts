import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { gammaQuantileOf } from "./gamma-quantile.js";
import { incompleteGamma } from "./incomplete-gamma.js";

/** A gamma distribution: shape and rate (one over the scale), both positive. */
export interface GammaShape {
  readonly shape: number;
  readonly rate: number;
}

/**
 * P(X <= x) of a gamma X.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.2.4
 * @example gammaCdf(2, { shape: 1, rate: 1 }) // => 0.864664716763
 */
export function gammaCdf(x: number, { shape, rate }: GammaShape): number {
  check("gammaCdf", shape, rate);
  requireNumber("gammaCdf", "x", x);
  return incompleteGamma(shape, x * rate).lower;
}

/**
 * P(X > x) of a gamma X, to full precision when small.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.2.4
 * @example gammaUpper(2, { shape: 1, rate: 1 }) // => 0.135335283237
 */
export function gammaUpper(x: number, { shape, rate }: GammaShape): number {
  check("gammaUpper", shape, rate);
  requireNumber("gammaUpper", "x", x);
  return incompleteGamma(shape, x * rate).upper;
}

/**
 * The x that a gamma X stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example gammaQuantile(0.5, { shape: 1, rate: 1 }) // => 0.69314718056
 */
export function gammaQuantile(p: number, { shape, rate }: GammaShape): number {
  check("gammaQuantile", shape, rate);
  requireProbability("gammaQuantile", "p", p);
  return gammaQuantileOf(p, 1 - p, shape) / rate;
}

/**
 * The x that a gamma X exceeds with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example gammaUpperQuantile(0.5, { shape: 1, rate: 1 }) // => 0.69314718056
 */
export function gammaUpperQuantile(q: number, { shape, rate }: GammaShape): number {
  check("gammaUpperQuantile", shape, rate);
  requireProbability("gammaUpperQuantile", "q", q);
  return gammaQuantileOf(1 - q, q, shape) / rate;
}

function check(caller: string, shape: number, rate: number): void {
  requirePositive(caller, "shape", shape);
  requirePositive(caller, "rate", rate);
}
