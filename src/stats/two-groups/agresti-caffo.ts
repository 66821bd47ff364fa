import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";

/** Difference of two independent proportions, first minus second. */
export interface AgrestiCaffoResult extends TwoGroups {
  readonly method: "agrestiCaffo";
  readonly level: number;
  /** Of the data themselves; the interval is centred on the difference after the addition. */
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Agresti-Caffo interval for the difference of two independent proportions: the simple interval after one success and one
 * failure are added to each group. Not cut to the range from -1 to 1.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Agresti, Caffo 2000, Am Stat 54:280-288
 * @example agrestiCaffo({ first: { successes: 7, trials: 34 }, second: { successes: 1, trials: 34 } }).interval // => { low: 0.01161167, high: 0.3217217 }
 */
export function agrestiCaffo(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): AgrestiCaffoResult {
  requireTwoGroups("agrestiCaffo", { first, second });
  requireOptions("agrestiCaffo", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("agrestiCaffo", level);
  const one = (first.successes + 1) / (first.trials + 2);
  const two = (second.successes + 1) / (second.trials + 2);
  const error = Math.sqrt((one * (1 - one)) / (first.trials + 2) + (two * (1 - two)) / (second.trials + 2));
  const half = normalUpperQuantile((1 - level) / 2) * error;
  const estimate = first.successes / first.trials - second.successes / second.trials;
  const interval = { low: one - two - half, high: one - two + half };
  return { method: "agrestiCaffo", first, second, level, estimate, interval };
}
