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

/** Throws unless both groups are counts of at least one trial. */
export function requireTwoGroups(caller: string, { first, second }: TwoGroups): void {
  requireCount(caller, first.successes, first.trials, "first");
  requireCount(caller, second.successes, second.trials, "second");
}
