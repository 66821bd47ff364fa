import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { requireTwoGroups, type NoInterval, type TwoGroups } from "./groups.js";

/** Sample odds ratio of the first group's success to the second's, with limits on the logarithmic scale. */
export type WoolfResult = TwoGroups & {
  readonly method: "woolf";
  readonly level: number;
  readonly interval: Interval | NoInterval;
} & ({ readonly estimate: number } | NotEstimable);

/**
 * Sample odds ratio ad/bc with Woolf's logit limits. Nothing is added to the cells: with an empty one the estimate is 0,
 * Infinity or undefined, and the limits are not defined.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Woolf 1955, Ann Hum Genet 19:251-253; Agresti 2002, Categorical Data Analysis, section 3.1.1
 * @example woolf({ first: { successes: 21, trials: 23 }, second: { successes: 15, trials: 18 } }).interval // => { low: 0.3116, high: 14.1523 }
 */
export function woolf({ first, second }: TwoGroups, options: { readonly level?: number } = {}): WoolfResult {
  requireTwoGroups("woolf", { first, second });
  requireOptions("woolf", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("woolf", level);
  const a = first.successes;
  const b = first.trials - a;
  const c = second.successes;
  const d = second.trials - c;
  const asked = { method: "woolf", first, second, level } as const;
  if (a * d === 0 || b * c === 0) {
    const because = "a cell of the table is empty, so the standard error of the log odds ratio is not defined";
    const interval = { low: null, high: null, because };
    if (a * d > 0 || b * c > 0) return { ...asked, estimate: a * d > 0 ? Infinity : 0, interval };
    return { ...asked, estimate: null, because: "both products of the odds ratio are 0", interval };
  }
  const logEstimate = Math.log(a / b) - Math.log(c / d);
  const half = normalUpperQuantile((1 - level) / 2) * Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
  const interval = { low: Math.exp(logEstimate - half), high: Math.exp(logEstimate + half) };
  return { ...asked, estimate: (a / b) * (d / c), interval };
}
