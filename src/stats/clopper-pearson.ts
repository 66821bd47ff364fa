import { betaQuantile, betaUpperQuantile } from "../numeric/beta.js";
import { requireCount, requireLevel, requireOptions } from "./guards.js";
import type { Interval } from "./types.js";

export interface ClopperPearsonResult {
  readonly method: "clopperPearson";
  readonly successes: number;
  readonly trials: number;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Exact interval for one proportion: each limit leaves half of the uncovered probability in its binomial tail.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Clopper and Pearson 1934, Biometrika 26:404-413; beta quantiles as in Newcombe 1998, Stat Med 17:857-872, method 5
 * @example clopperPearson(0, 20).interval // => { low: 0, high: 0.1684335 }
 */
export function clopperPearson(
  successes: number,
  trials: number,
  options: { readonly level?: number } = {},
): ClopperPearsonResult {
  requireOptions("clopperPearson", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("clopperPearson", level);
  requireCount("clopperPearson", successes, trials);

  const tail = (1 - level) / 2;
  const failures = trials - successes;
  const low = successes === 0 ? 0 : betaQuantile(tail, { a: successes, b: failures + 1 });
  const high = failures === 0 ? 1 : betaUpperQuantile(tail, { a: successes + 1, b: failures });
  return { method: "clopperPearson", successes, trials, level, estimate: successes / trials, interval: { low, high } };
}
