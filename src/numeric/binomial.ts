import { binomialMass } from "./binomial-mass.js";
import { requireInteger, requireProbability, requireWhole } from "./guards.js";
import { incompleteBeta } from "./incomplete-beta.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

/** A binomial distribution. */
export interface Binomial {
  /** Integer, at least 0. */
  readonly trials: number;
  /** Chance of success in one trial, in [0, 1]. */
  readonly probability: number;
}

/**
 * P(X = k) of a binomial X.
 *
 * @param k integer; outside 0 to trials the mass is 0
 * @throws RangeError when an argument is out of range
 * @see Loader 2000, Fast and accurate computation of binomial probabilities
 * @example binomialPmf(3, { trials: 10, probability: 0.5 }) // => 0.1171875
 */
export function binomialPmf(k: number, { trials, probability }: Binomial): number {
  check("binomialPmf", k, trials, probability);
  return binomialMass(k, trials, probability, 1 - probability);
}

/**
 * P(X <= k) of a binomial X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.5
 * @example binomialCdf(3, { trials: 10, probability: 0.5 }) // => 0.171875
 */
export function binomialCdf(k: number, { trials, probability }: Binomial): number {
  check("binomialCdf", k, trials, probability);
  return binomialTails(k, trials, probability).lower;
}

/**
 * P(X > k) of a binomial X, to full precision when small.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.5
 * @example binomialUpper(3, { trials: 10, probability: 0.5 }) // => 0.828125
 */
export function binomialUpper(k: number, { trials, probability }: Binomial): number {
  check("binomialUpper", k, trials, probability);
  return binomialTails(k, trials, probability).upper;
}

/** Both tails at k. Unguarded kernel. */
export function binomialTails(k: number, trials: number, probability: number): Tails {
  if (k < 0) return allAbove;
  if (k >= trials) return allBelow;
  const { lower, upper } = incompleteBeta(probability, 1 - probability, k + 1, trials - k);
  return { lower: upper, upper: lower };
}

function check(caller: string, k: number, trials: number, probability: number): void {
  requireInteger(caller, "k", k);
  requireWhole(caller, "trials", trials);
  requireProbability(caller, "probability", probability);
}
