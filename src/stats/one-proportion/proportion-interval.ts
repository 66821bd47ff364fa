import { requireCount, requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";

/** An interval for one proportion, with all that it was computed from. */
export interface ProportionInterval<Method extends string> extends Count {
  readonly method: Method;
  /** Nominal coverage, in (0, 1). */
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/** Options of every interval for one proportion. */
export interface LevelOption {
  /** Nominal coverage, in (0, 1); default 0.95. */
  readonly level?: number;
}

/** Checks the arguments of an interval for one proportion and gives the level. */
export function levelFor(caller: string, successes: number, trials: number, options: LevelOption): number {
  requireOptions(caller, options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel(caller, level);
  requireCount(caller, successes, trials);
  return level;
}
