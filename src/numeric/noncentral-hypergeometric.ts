import { requireInteger, requirePositive, requireWhole } from "./guards.js";
import type { Hypergeometric } from "./hypergeometric.js";

/** Fisher's noncentral hypergeometric distribution: a 2x2 table with all margins held, under an odds ratio. */
export interface NoncentralHypergeometric extends Hypergeometric {
  /** Positive and finite. */
  readonly oddsRatio: number;
}

/**
 * P(X = k) of Fisher's noncentral hypergeometric X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see Liao and Rosen 2001, Am Stat 55:366-369
 * @example noncentralHypergeometricPmf(1, { population: 4, successes: 2, drawn: 2, oddsRatio: 3 }) // => 0.54545454545
 */
export function noncentralHypergeometricPmf(k: number, distribution: NoncentralHypergeometric): number {
  const { at, below, above } = sums("noncentralHypergeometricPmf", k, distribution);
  return at / (below + above);
}

/**
 * P(X <= k) of Fisher's noncentral hypergeometric X.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see Liao and Rosen 2001, Am Stat 55:366-369
 * @example noncentralHypergeometricCdf(0, { population: 4, successes: 2, drawn: 2, oddsRatio: 3 }) // => 0.04545454545
 */
export function noncentralHypergeometricCdf(k: number, distribution: NoncentralHypergeometric): number {
  const { below, above } = sums("noncentralHypergeometricCdf", k, distribution);
  return below / (below + above);
}

/**
 * P(X > k) of Fisher's noncentral hypergeometric X, to full precision when small.
 *
 * @param k integer
 * @throws RangeError when an argument is out of range
 * @see Liao and Rosen 2001, Am Stat 55:366-369
 * @example noncentralHypergeometricUpper(1, { population: 4, successes: 2, drawn: 2, oddsRatio: 3 }) // => 0.40909090909
 */
export function noncentralHypergeometricUpper(k: number, distribution: NoncentralHypergeometric): number {
  const { below, above } = sums("noncentralHypergeometricUpper", k, distribution);
  return above / (below + above);
}

interface Sums {
  /** Mass at k, at or below k, above k, all in units of the mass at the mode. */
  readonly at: number;
  readonly below: number;
  readonly above: number;
}

/** Masses by their ratio recurrence outward from the mode, added from the small ones to the large. */
function sums(caller: string, k: number, { population, successes, drawn, oddsRatio }: NoncentralHypergeometric): Sums {
  requireInteger(caller, "k", k);
  requireWhole(caller, "population", population);
  requireWhole(caller, "successes", successes, population);
  requireWhole(caller, "drawn", drawn, population);
  requirePositive(caller, "oddsRatio", oddsRatio);
  const others = population - successes - drawn;
  const least = Math.max(0, -others);
  const most = Math.min(drawn, successes);
  if (k < least) return { at: 0, below: 0, above: 1 };
  if (k > most) return { at: 0, below: 1, above: 0 };
  const ratio = (j: number): number => oddsRatio * ((successes - j) / (j + 1)) * ((drawn - j) / (others + j + 1));
  const mode = modeOf({ successes, drawn, others, oddsRatio, least, most });

  const right = outward((j) => ratio(mode + j), most - mode, Math.max(0, k - mode));
  const left = outward((j) => 1 / ratio(mode - j - 1), mode - least, Math.max(0, mode - k));
  const cut = k - mode;
  const at = cut === 0 ? 1 : ((cut > 0 ? right[cut - 1] : left[-cut - 1]) ?? 0);
  const rightAbove = total(right, Math.max(0, cut));
  const leftBelow = total(left, Math.max(0, -cut - 1));
  return cut >= 0
    ? { at, above: rightAbove, below: total(right.slice(0, cut), 0) + leftBelow + 1 }
    : { at, above: rightAbove + total(left.slice(0, -cut - 1), 0) + 1, below: leftBelow };
}

/** Products of the ratios; stops where they vanish, but not before the wanted place. */
function outward(ratio: (j: number) => number, steps: number, wanted: number): number[] {
  const masses: number[] = [];
  let mass = 1;
  for (let j = 0; j < steps; j++) {
    mass *= ratio(j);
    masses.push(mass);
    if (mass < 1e-320 && j >= wanted) break;
  }
  return masses;
}

function total(masses: readonly number[], from: number): number {
  let sum = 0;
  for (let i = masses.length - 1; i >= from; i--) sum += masses[i]!;
  return sum;
}

interface Support {
  readonly successes: number;
  readonly drawn: number;
  readonly others: number;
  readonly oddsRatio: number;
  readonly least: number;
  readonly most: number;
}

/** The root of the quadratic where neighbouring masses are equal, in the form that neither cancels nor overflows. */
function modeOf({ successes, drawn, others, oddsRatio, least, most }: Support): number {
  const [odds, one] = oddsRatio > 1 ? [1, 1 / oddsRatio] : [oddsRatio, 1];
  const a = odds - one;
  const b = (successes + drawn + 2) * odds + others * one;
  const c = (successes + 1) * (drawn + 1) * odds;
  const spread = Math.sqrt(Math.max(0, b * b - 4 * a * c));
  const root = b < 0 ? (b - spread) / (2 * a) : (2 * c) / (b + spread);
  return Math.min(most, Math.max(least, Math.floor(root)));
}
