import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { betaPower, incompleteBeta } from "./incomplete-beta.js";
import { logitQuantile } from "./logit-quantile.js";
import type { Tails } from "./tails.js";

/** Shape of a beta distribution: both positive. */
export interface BetaShape {
  readonly a: number;
  readonly b: number;
}

/**
 * P(X <= x) of a beta X.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22
 * @example betaCdf(0.3, { a: 2, b: 3 }) // => 0.3483
 */
export function betaCdf(x: number, shape: BetaShape): number {
  return tails("betaCdf", x, shape).lower;
}

/**
 * P(X > x) of a beta X, to full precision when small.
 *
 * @param x any number
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22
 * @example betaUpper(0.3, { a: 2, b: 3 }) // => 0.6517
 */
export function betaUpper(x: number, shape: BetaShape): number {
  return tails("betaUpper", x, shape).upper;
}

/** Density of a beta distribution at x strictly between 0 and 1. */
export function betaDensity(x: number, { a, b }: BetaShape): number {
  check("betaDensity", a, b);
  if (!(x > 0 && x < 1)) throw new RangeError(`betaDensity: x must lie between 0 and 1, got ${x}`);
  return betaPower(x, 1 - x, a, b) / x / (1 - x);
}

/**
 * The x that a beta X stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example betaQuantile(0.025, { a: 21, b: 3 }) // => 0.719620664091
 */
export function betaQuantile(p: number, { a, b }: BetaShape): number {
  requireProbability("betaQuantile", "p", p);
  check("betaQuantile", a, b);
  if (p === 0 || p === 1) return p;
  return fromLogit(logitQuantile(p, 1 - p, a, b));
}

/**
 * The x that a beta X exceeds with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example betaUpperQuantile(0.025, { a: 22, b: 2 }) // => 0.989290033962
 */
export function betaUpperQuantile(q: number, { a, b }: BetaShape): number {
  requireProbability("betaUpperQuantile", "q", q);
  check("betaUpperQuantile", a, b);
  if (q === 0 || q === 1) return 1 - q;
  return fromLogit(logitQuantile(1 - q, q, a, b));
}

function fromLogit(u: number): number {
  return u < 0 ? Math.exp(u) / (1 + Math.exp(u)) : 1 / (1 + Math.exp(-u));
}

function tails(caller: string, x: number, { a, b }: BetaShape): Tails {
  requireNumber(caller, "x", x);
  check(caller, a, b);
  return incompleteBeta(x, 1 - x, a, b);
}

function check(caller: string, a: number, b: number): void {
  requirePositive(caller, "a", a);
  requirePositive(caller, "b", b);
}
