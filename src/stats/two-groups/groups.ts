import { requireCount } from "../guards.js";
import type { Count } from "../types.js";

/** Two independent groups. Differences are first minus second, ratios first over second. */
export interface TwoGroups {
  readonly first: Count;
  readonly second: Count;
}

/** Limits that the data leave undefined, with the reason to print. */
export interface NoInterval {
  readonly low: null;
  readonly high: null;
  readonly because: string;
}

/** Throws unless both groups are counts of at least one trial, together below 2^53. */
export function requireTwoGroups(caller: string, { first, second }: TwoGroups): void {
  requireCount(caller, first.successes, first.trials, "first");
  requireCount(caller, second.successes, second.trials, "second");
  const trials = first.trials + second.trials;
  if (!Number.isSafeInteger(trials))
    throw new RangeError(`${caller}: both groups together must have fewer than 2^53 trials, got ${trials}`);
}
