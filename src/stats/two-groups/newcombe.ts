import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";

/** Difference of two independent proportions, first minus second. */
export interface NewcombeResult extends TwoGroups {
  readonly method: "newcombe";
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Newcombe interval for the difference of two independent proportions: the distances from each estimate to its Wilson limits,
 * squared and added.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Newcombe 1998, Stat Med 17:873-890, method 10
 * @example newcombe({ first: { successes: 56, trials: 70 }, second: { successes: 48, trials: 80 } }).interval // => { low: 0.0524, high: 0.3339 }
 */
export function newcombe({ first, second }: TwoGroups, options: { readonly level?: number } = {}): NewcombeResult {
  requireTwoGroups("newcombe", { first, second });
  requireOptions("newcombe", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("newcombe", level);
  const one = wilson(first.successes, first.trials, { level });
  const two = wilson(second.successes, second.trials, { level });
  const estimate = one.estimate - two.estimate;
  const down = Math.hypot(one.estimate - one.interval.low, two.interval.high - two.estimate);
  const up = Math.hypot(one.interval.high - one.estimate, two.estimate - two.interval.low);
  // Against all or nothing in one group the limits reach the estimate's own bound, not beyond it by rounding.
  const interval = { low: Math.max(-1, estimate - down), high: Math.min(1, estimate + up) };
  return { method: "newcombe", first, second, level, estimate, interval };
}
