import { bernsteinMaximum } from "../../numeric/bernstein-maximum.js";
import type { TwoGroups } from "./groups.js";

export const alternatives = ["twoSided", "less", "greater"] as const;
export type Alternative = (typeof alternatives)[number];

/** Most trials of both groups together for which the certified maximum is worth its time. */
export const mostTrials = 5_000;

/** The tables with one total number of successes: first cells from `low` up, with their probabilities given the total. */
export interface TotalSlice {
  readonly successes: number;
  readonly low: number;
  readonly probabilities: Float64Array;
}

/** An unconditional p value and the common success probability at which it is reached. */
export interface UnconditionalP {
  readonly p: number;
  readonly nuisance: number;
}

/**
 * Largest probability, over every common success probability, of the tables that `rejected` counts as no less extreme than
 * the observed one: given each total of successes, it returns their conditional probability. Over the totals these are the
 * Bernstein coefficients of the p value as a polynomial in the common probability.
 */
export function unconditionalP({ first, second }: TwoGroups, rejected: (slice: TotalSlice) => number): UnconditionalP {
  const m = first.trials;
  const n = second.trials;
  const coefficients = new Float64Array(m + n + 1);
  for (let successes = 0; successes <= m + n; successes++) coefficients[successes] = rejected(sliceOf(m, n, successes));
  const { value, at } = bernsteinMaximum(coefficients);
  return { p: Math.min(1, value), nuisance: at };
}

/** Hypergeometric probabilities by ratios from the likeliest cell. */
function sliceOf(m: number, n: number, successes: number): TotalSlice {
  const low = Math.max(0, successes - n);
  const high = Math.min(m, successes);
  const gap = n - successes;
  const mode = Math.min(high, Math.max(low, Math.floor(((m + 1) * (successes + 1)) / (m + n + 2))));
  const probabilities = new Float64Array(high - low + 1);
  probabilities[mode - low] = 1;
  let total = 1;
  for (let x = mode, weight = 1; x < high; x++) {
    weight *= ((m - x) * (successes - x)) / ((x + 1) * (gap + x + 1));
    probabilities[x + 1 - low] = weight;
    total += weight;
  }
  for (let x = mode, weight = 1; x > low; x--) {
    weight *= (x * (gap + x)) / ((m - x + 1) * (successes - x + 1));
    probabilities[x - 1 - low] = weight;
    total += weight;
  }
  for (let i = 0; i < probabilities.length; i++) probabilities[i]! /= total;
  return { successes, low, probabilities };
}

/** Throws unless the alternative is known and the totals are within reach. */
export function requireUnconditional(caller: string, { first, second }: TwoGroups, alternative: Alternative): void {
  if (!alternatives.includes(alternative))
    throw new RangeError(`${caller}: alternative must be "twoSided", "less" or "greater", got ${alternative}`);
  const trials = first.trials + second.trials;
  if (trials > mostTrials)
    throw new RangeError(`${caller}: both groups together must have at most ${mostTrials} trials, got ${trials}`);
}
