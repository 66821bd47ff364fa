import { binomialMass } from "./binomial-mass.js";
import { requireInteger, requireWhole } from "./guards.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

/** Drawing without replacement: the distribution of the successes among those drawn. */
export interface Hypergeometric {
  /** All items, at least 0. */
  readonly population: number;
  /** Successes among them, 0 to population. */
  readonly successes: number;
  /** Items drawn, 0 to population. */
  readonly drawn: number;
}

/**
 * P(X = k) of a hypergeometric X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see Loader 2000 (three saddle-point binomial masses)
 * @example hypergeometricPmf(1, { population: 10, successes: 4, drawn: 3 }) // => 0.5
 */
export function hypergeometricPmf(k: number, { population, successes, drawn }: Hypergeometric): number {
  check("hypergeometricPmf", k, population, successes, drawn);
  return hypergeometricMass(k, population, successes, drawn);
}

/**
 * P(X <= k) of a hypergeometric X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @example hypergeometricCdf(1, { population: 10, successes: 4, drawn: 3 }) // => 0.66666667
 */
export function hypergeometricCdf(k: number, { population, successes, drawn }: Hypergeometric): number {
  check("hypergeometricCdf", k, population, successes, drawn);
  return hypergeometricTails(k, population, successes, drawn).lower;
}

/**
 * P(X > k) of a hypergeometric X, to full precision when small.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @example hypergeometricUpper(1, { population: 10, successes: 4, drawn: 3 }) // => 0.33333333
 */
export function hypergeometricUpper(k: number, { population, successes, drawn }: Hypergeometric): number {
  check("hypergeometricUpper", k, population, successes, drawn);
  return hypergeometricTails(k, population, successes, drawn).upper;
}

/** P(X = k). Unguarded kernel. */
export function hypergeometricMass(k: number, population: number, successes: number, drawn: number): number {
  const failures = population - successes;
  if (k < Math.max(0, drawn - failures) || k > Math.min(drawn, successes)) return 0;
  if (drawn === 0 || drawn === population) return 1;
  const p = drawn / population;
  const q = (population - drawn) / population;
  const both = binomialMass(k, successes, p, q) * binomialMass(drawn - k, failures, p, q);
  return both / binomialMass(drawn, population, p, q);
}

/** Both tails at k: the ratio recurrence summed on the smaller side. Unguarded kernel. */
export function hypergeometricTails(k: number, population: number, successes: number, drawn: number): Tails {
  const least = Math.max(0, drawn - (population - successes));
  const most = Math.min(drawn, successes);
  if (k < least) return allAbove;
  if (k >= most) return allBelow;
  const others = population - successes - drawn;
  if (k < (drawn * successes) / population) {
    let term = 1;
    let sum = 1;
    for (let j = k; j > least && term > sum * 1e-17; j--) {
      term *= (j / (successes - j + 1)) * ((others + j) / (drawn - j + 1));
      sum += term;
    }
    const lower = Math.min(1, hypergeometricMass(k, population, successes, drawn) * sum);
    return { lower, upper: 1 - lower };
  }
  let term = 1;
  let sum = 1;
  for (let j = k + 1; j < most && term > sum * 1e-17; j++) {
    term *= ((successes - j) / (j + 1)) * ((drawn - j) / (others + j + 1));
    sum += term;
  }
  const upper = Math.min(1, hypergeometricMass(k + 1, population, successes, drawn) * sum);
  return { lower: 1 - upper, upper };
}

function check(caller: string, k: number, population: number, successes: number, drawn: number): void {
  requireInteger(caller, "k", k);
  requireWhole(caller, "population", population);
  requireWhole(caller, "successes", successes, population);
  requireWhole(caller, "drawn", drawn, population);
}
