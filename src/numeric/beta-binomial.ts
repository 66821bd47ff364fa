import { binomialMass } from "./binomial-mass.js";
import { requireInteger, requirePositive, requireWhole } from "./guards.js";
import { betaPower } from "./incomplete-beta.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

/** A beta-binomial distribution: a binomial whose chance of success follows a beta distribution. */
export interface BetaBinomial {
  /** Integer, at least 0. */
  readonly trials: number;
  /** Shape of the beta distribution, both positive. */
  readonly a: number;
  readonly b: number;
}

/**
 * P(X = k) of a beta-binomial X: choose(n, k) B(k + a, n - k + b) / B(a, b).
 *
 * @param k integer; outside 0 to trials the mass is 0
 * @throws RangeError when an argument is out of range
 * @see Skellam 1948, J R Stat Soc B 10:257-261
 * @example betaBinomialPmf(1, { trials: 2, a: 1, b: 1 }) // => 0.33333333
 */
export function betaBinomialPmf(k: number, distribution: BetaBinomial): number {
  check("betaBinomialPmf", k, distribution);
  return mass(k, distribution);
}

/**
 * P(X <= k) of a beta-binomial X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @example betaBinomialCdf(1, { trials: 2, a: 1, b: 1 }) // => 0.66666667
 */
export function betaBinomialCdf(k: number, distribution: BetaBinomial): number {
  check("betaBinomialCdf", k, distribution);
  return tails(k, distribution).lower;
}

/**
 * P(X > k) of a beta-binomial X, to full precision when small.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @example betaBinomialUpper(1, { trials: 2, a: 1, b: 1 }) // => 0.33333333
 */
export function betaBinomialUpper(k: number, distribution: BetaBinomial): number {
  check("betaBinomialUpper", k, distribution);
  return tails(k, distribution).upper;
}

/** The identity holds at every x; at the mean of the updated beta all three factors are of ordinary size. */
function mass(k: number, { trials, a, b }: BetaBinomial): number {
  if (k < 0 || k > trials) return 0;
  const n = trials + a + b;
  const x = (k + a) / n;
  const y = (trials - k + b) / n;
  return (binomialMass(k, trials, x, y) * betaPower(x, y, a, b)) / betaPower(x, y, a + k, b + trials - k);
}

/** The side away from the mean is summed by the ratio of neighbouring masses. */
function tails(k: number, distribution: BetaBinomial): Tails {
  const { trials, a, b } = distribution;
  if (k < 0) return allAbove;
  if (k >= trials) return allBelow;
  if (k < (trials * a) / (a + b)) {
    let term = mass(k, distribution);
    let lower = term;
    for (let j = k; j > 0; j--) {
      term *= (j / (trials - j + 1)) * ((b + trials - j) / (a + j - 1));
      lower += term;
    }
    return { lower: Math.min(1, lower), upper: Math.max(0, 1 - lower) };
  }
  let term = mass(k + 1, distribution);
  let upper = term;
  for (let j = k + 1; j < trials; j++) {
    term *= ((trials - j) / (j + 1)) * ((a + j) / (b + trials - j - 1));
    upper += term;
  }
  return { lower: Math.max(0, 1 - upper), upper: Math.min(1, upper) };
}

function check(caller: string, k: number, { trials, a, b }: BetaBinomial): void {
  requireInteger(caller, "k", k);
  requireWhole(caller, "trials", trials);
  requirePositive(caller, "a", a);
  requirePositive(caller, "b", b);
}
