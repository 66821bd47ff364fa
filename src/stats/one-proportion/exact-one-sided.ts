import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import type { Count } from "../types.js";
import { levelFor, type LevelOption } from "./proportion-interval.js";

export interface ExactOneSidedResult extends Count {
  readonly method: "exactOneSided";
  /** Confidence of each limit alone, in (0, 1). */
  readonly level: number;
  readonly estimate: number;
  /** At least this, with the given confidence. */
  readonly lower: number;
  /** At most this, with the given confidence. */
  readonly upper: number;
}

/**
 * Exact one-sided limits for one proportion: each leaves the whole of 1 - level in its binomial tail. With no event in n
 * the upper one is 1 - (1 - level)^(1/n), about 3/n at 0.95.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level confidence of each limit alone, in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Clopper and Pearson 1934, Biometrika 26:404-413; Hanley and Lippman-Hand 1983, JAMA 249:1743-1745
 * @example exactOneSided(0, 30).upper // => 0.0950338529
 */
export function exactOneSided(successes: number, trials: number, options: LevelOption = {}): ExactOneSidedResult {
  const level = levelFor("exactOneSided", successes, trials, options);
  const failures = trials - successes;
  const lower = successes === 0 ? 0 : betaQuantile(1 - level, { a: successes, b: failures + 1 });
  const upper = failures === 0 ? 1 : betaUpperQuantile(1 - level, { a: successes + 1, b: failures });
  return { method: "exactOneSided", successes, trials, level, estimate: successes / trials, lower, upper };
}
