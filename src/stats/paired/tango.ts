import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { requirePairs, type Pairs } from "./pairs.js";

/** Difference of two proportions in the same pairs, first minus second. */
export interface TangoResult {
  readonly method: "tango";
  readonly pairs: Pairs;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Tango's score interval for a paired difference of proportions: the differences that the score test does not reject.
 * @param pairs counts of pairs: both succeeded, only the first, only the second, neither
 * @param options level, default 0.95
 * @throws RangeError when a cell is no count, there is no pair or the level is out of range; TypeError for an unknown option
 * @see Tango 1998, Stat Med 17:891-908
 * @example tango({ both: 1, firstOnly: 1, secondOnly: 7, neither: 12 }).interval // => { low: -0.517, high: -0.026 }
 */
export function tango(pairs: Pairs, options: { readonly level?: number } = {}): TangoResult {
  requirePairs("tango", pairs);
  requireOptions("tango", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("tango", level);
  const { both, firstOnly, secondOnly, neither } = pairs;
  const total = both + firstOnly + secondOnly + neither;
  const estimate = (firstOnly - secondOnly) / total;
  const z = normalUpperQuantile((1 - level) / 2);
  const score = (difference: number): number => scoreOfPairs(firstOnly, secondOnly, total, difference);
  const low = estimate === -1 ? -1 : bracketedRoot((d) => score(d) - z, { low: -1, high: estimate });
  const high = estimate === 1 ? 1 : bracketedRoot((d) => score(d) + z, { low: estimate, high: 1 });
  return { method: "tango", pairs, level, estimate, interval: { low, high } };
}

/** (observed - expected) over its standard error at the likeliest share of pairs where only the second succeeded. */
function scoreOfPairs(firstOnly: number, secondOnly: number, total: number, difference: number): number {
  const above = firstOnly - secondOnly - total * difference;
  if (above === 0) return 0;
  const b = (2 * total - firstOnly + secondOnly) * difference - firstOnly - secondOnly;
  const c = -secondOnly * difference * (1 - difference);
  const root = Math.sqrt(Math.max(0, b ** 2 - 8 * total * c));
  // The larger root, written so that nothing cancels when b is positive.
  const share = b > 0 ? (-2 * c) / (b + root) : (root - b) / (4 * total);
  return above / Math.sqrt(Math.max(0, total * (2 * share + difference * (1 - difference))));
}
