import { requireCount, requireLevel, requireOptions } from "../guards.js";
import type { Count } from "../types.js";
import { wilson, type WilsonResult } from "../wilson.js";

export interface LossBounds {
  readonly method: "worst and best case over lost cases";
  readonly level: number;
  readonly lost: number;
  /** Among the cases followed. */
  readonly followed: WilsonResult;
  /** Had every lost case failed. */
  readonly worst: WilsonResult;
  /** Had every lost case succeeded. */
  readonly best: WilsonResult;
}

/**
 * What lost cases could have done to a success rate, at the extremes.
 *
 * @param followed successes of the cases followed
 * @param options.lost cases lost, zero or more
 * @param options.level coverage of the Wilson limits; default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Zelle et al. 2013, J Orthop Trauma 27:177-181, on what loss does to conclusions
 * @example lossBounds({ successes: 42, trials: 51 }, { lost: 4 }).worst.estimate // => 0.763636363636364
 */
export function lossBounds(followed: Count, options: { readonly lost: number; readonly level?: number }): LossBounds {
  requireOptions("lossBounds", options, ["lost", "level"]);
  const { lost, level = 0.95 } = options;
  requireLevel("lossBounds", level);
  requireCount("lossBounds", followed.successes, followed.trials);
  requireLost("lossBounds", "lost", lost);
  const { successes, trials } = followed;
  return {
    method: "worst and best case over lost cases",
    level,
    lost,
    followed: wilson(successes, trials, { level }),
    worst: wilson(successes, trials + lost, { level }),
    best: wilson(successes + lost, trials + lost, { level }),
  };
}

/** Throws unless the number lost is an integer of zero or more. */
export function requireLost(caller: string, name: string, lost: number): void {
  if (!(Number.isSafeInteger(lost) && lost >= 0))
    throw new RangeError(`${caller}: ${name} must be an integer of at least 0, got ${lost}`);
}
