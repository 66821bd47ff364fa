import { requireLevel, requireOptions } from "../guards.js";
import type { LevelOption } from "./proportion-interval.js";

export interface ConsecutiveSuccessesResult {
  readonly method: "exactOneSided";
  readonly failureRate: number;
  readonly level: number;
  /** The least number of consecutive successes. */
  readonly successes: number;
}

/**
 * How many consecutive successes exclude a failure rate: the least n whose exact one-sided upper limit for the failure
 * rate, after no failure in n, is at most that rate.
 *
 * @param failureRate in (0, 1)
 * @param options.level confidence of the limit, in (0, 1); default 0.95
 * @throws RangeError when the rate or the level is out of range
 * @see Hanley and Lippman-Hand 1983, JAMA 249:1743-1745
 * @example consecutiveSuccesses(0.05).successes // => 59
 */
export function consecutiveSuccesses(failureRate: number, options: LevelOption = {}): ConsecutiveSuccessesResult {
  requireOptions("consecutiveSuccesses", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("consecutiveSuccesses", level);
  if (!(failureRate > 0 && failureRate < 1))
    throw new RangeError(`consecutiveSuccesses: failureRate must lie between 0 and 1, got ${failureRate}`);
  // The quotient is off by a few units of the last digit: a rate met exactly must not cost one success more.
  const needed = (Math.log1p(-level) / Math.log1p(-failureRate)) * (1 - 4e-15);
  return { method: "exactOneSided", failureRate, level, successes: Math.ceil(needed) };
}
