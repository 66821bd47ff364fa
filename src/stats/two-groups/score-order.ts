import type { TwoGroups } from "./groups.js";
import { scoreOfDifference } from "./score-of-difference.js";

/** Which tables count as extreme: with a score at least the observed one, or at least as far from 0 on either side. */
export type Extreme = "upper" | "both";

/**
 * The extreme tables as a staircase: for each count of the first group, those of the second up to `upTo`, and from `from` on.
 */
export interface ScoreOrder {
  readonly upTo: Int32Array;
  readonly from: Int32Array;
}

/** Tables no less extreme than the observed one at a difference; the score rises with the first count, falls with the second. */
export function orderByScore({ first, second }: TwoGroups, difference: number, extreme: Extreme): ScoreOrder {
  const m = first.trials;
  const n = second.trials;
  const score = (a: number, c: number): number =>
    scoreOfDifference({ first: { successes: a, trials: m }, second: { successes: c, trials: n } }, difference);
  const observed = score(first.successes, second.successes);
  const tie = 1e-9 * Math.min(1e9, Math.abs(observed)) + 1e-12;
  const upper = extreme === "both" ? Math.abs(observed) : observed;
  const upTo = new Int32Array(m + 1);
  const from = new Int32Array(m + 1).fill(n + 1);
  for (let a = 0, c = -1; a <= m; a++) {
    while (c < n && score(a, c + 1) >= upper - tie) c++;
    upTo[a] = c;
  }
  if (extreme === "both")
    for (let a = 0, c = 0; a <= m; a++) {
      while (c <= n && score(a, c) > tie - upper) c++;
      from[a] = Math.max(c, upTo[a]! + 1);
    }
  return { upTo, from };
}

/** Probability of the tables of the order when the second proportion is `p2` and the first differs by `difference`. */
export function probabilityAsExtreme(
  { first, second }: TwoGroups,
  difference: number,
  p2: number,
  { upTo, from }: ScoreOrder,
): number {
  const p1 = Math.min(1, Math.max(0, p2 + difference));
  const one = binomialMasses(first.trials, p1);
  const below = binomialMasses(second.trials, p2);
  for (let c = 1; c < below.length; c++) below[c]! += below[c - 1]!;
  let sum = 0;
  for (let a = 0; a < one.length; a++) {
    const weight = one[a]!;
    if (weight === 0) continue;
    const lower = upTo[a]! >= 0 ? below[upTo[a]!]! : 0;
    const above = from[a]! < below.length ? 1 - (from[a]! > 0 ? below[from[a]! - 1]! : 0) : 0;
    sum += weight * (lower + above);
  }
  return sum;
}

/** All binomial probabilities, by ratios from the mode. */
function binomialMasses(trials: number, p: number): Float64Array {
  const masses = new Float64Array(trials + 1);
  const mode = Math.min(trials, Math.floor((trials + 1) * p));
  masses[mode] = 1;
  let total = 1;
  for (let x = mode, weight = 1; x < trials && weight > 1e-20;) {
    weight *= (p / (1 - p)) * ((trials - x) / (x + 1));
    masses[++x] = weight;
    total += weight;
  }
  for (let x = mode, weight = 1; x > 0 && weight > 1e-20;) {
    weight *= ((1 - p) / p) * (x / (trials - x + 1));
    masses[--x] = weight;
    total += weight;
  }
  for (let x = 0; x <= trials; x++) masses[x]! /= total;
  return masses;
}
