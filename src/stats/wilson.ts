import { normalUpperQuantile } from "../numeric/normal.js";
import { requireCount, requireLevel, requireOptions } from "./guards.js";
import type { Interval } from "./types.js";
import { wilsonLimits } from "./wilson-limits.js";

export interface WilsonResult {
  readonly method: "wilson";
  readonly successes: number;
  readonly trials: number;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Wilson score interval for one proportion, without continuity correction.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Wilson 1927, J Am Stat Assoc 22:209-212; form as in Newcombe 1998, Stat Med 17:857-872, method 3
 * @example wilson(17, 20).interval // => { low: 0.6395811, high: 0.9476313 }
 */
export function wilson(successes: number, trials: number, options: { readonly level?: number } = {}): WilsonResult {
  requireOptions("wilson", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("wilson", level);
  requireCount("wilson", successes, trials);

  const interval = wilsonLimits(successes, trials, normalUpperQuantile((1 - level) / 2));
  return { method: "wilson", successes, trials, level, estimate: successes / trials, interval };
}
