import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { requirePairs, type Pairs } from "./pairs.js";

/** Difference of two proportions in the same pairs, first minus second. */
export interface NewcombePairedResult {
  readonly method: "newcombePaired";
  readonly pairs: Pairs;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Newcombe interval for a paired difference of proportions: the distances to both Wilson limits, squared and added, less twice
 * their product times a correlation that is corrected for continuity when positive.
 * @param pairs counts of pairs: both succeeded, only the first, only the second, neither
 * @param options level, default 0.95
 * @throws RangeError when a cell is no count, there is no pair or the level is out of range; TypeError for an unknown option
 * @see Newcombe 1998, Stat Med 17:2635-2650, method 10
 * @example newcombePaired({ both: 36, firstOnly: 12, secondOnly: 2, neither: 0 }).interval // => { low: 0.0569, high: 0.3404 }
 */
export function newcombePaired(pairs: Pairs, options: { readonly level?: number } = {}): NewcombePairedResult {
  requirePairs("newcombePaired", pairs);
  requireOptions("newcombePaired", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("newcombePaired", level);
  const { both, firstOnly, secondOnly, neither } = pairs;
  const total = both + firstOnly + secondOnly + neither;
  const one = wilson(both + firstOnly, total, { level });
  const two = wilson(both + secondOnly, total, { level });
  const correlation = correctedCorrelation(pairs, total);
  const spread = (x: number, y: number): number => Math.sqrt(Math.max(0, x ** 2 - 2 * correlation * x * y + y ** 2));
  const estimate = (firstOnly - secondOnly) / total;
  const down = spread(one.estimate - one.interval.low, two.interval.high - two.estimate);
  const up = spread(one.interval.high - one.estimate, two.estimate - two.interval.low);
  const interval = { low: Math.max(-1, estimate - down), high: Math.min(1, estimate + up) };
  return { method: "newcombePaired", pairs, level, estimate, interval };
}

/** 0 with an empty margin; a positive determinant is reduced by half the pairs, not below 0. */
function correctedCorrelation({ both, firstOnly, secondOnly, neither }: Pairs, total: number): number {
  const margins =
    Math.sqrt((both + firstOnly) * (secondOnly + neither)) * Math.sqrt((both + secondOnly) * (firstOnly + neither));
  if (margins === 0) return 0;
  const determinant = both * neither - firstOnly * secondOnly;
  return (determinant > 0 ? Math.max(0, determinant - total / 2) : determinant) / margins;
}
