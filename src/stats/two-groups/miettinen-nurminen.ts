import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import { scoreOfDifference } from "./score-of-difference.js";

/** Difference of two independent proportions, first minus second. */
export interface MiettinenNurminenResult extends TwoGroups {
  readonly method: "miettinenNurminen";
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Miettinen-Nurminen score interval for the difference of two independent proportions: the differences that the score test
 * does not reject, its variance multiplied by N/(N - 1).
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Miettinen, Nurminen 1985, Stat Med 4:213-226; Newcombe 1998, Stat Med 17:873-890, method 6
 * @example miettinenNurminen({ first: { successes: 56, trials: 70 }, second: { successes: 48, trials: 80 } }).interval // => { low: 0.05282971, high: 0.3381729 }
 */
export function miettinenNurminen(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): MiettinenNurminenResult {
  requireTwoGroups("miettinenNurminen", { first, second });
  requireOptions("miettinenNurminen", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("miettinenNurminen", level);
  const estimate = first.successes / first.trials - second.successes / second.trials;
  const total = first.trials + second.trials;
  const z = normalUpperQuantile((1 - level) / 2) * Math.sqrt(total / (total - 1));
  const score = (difference: number): number => scoreOfDifference({ first, second }, difference);
  const low = estimate === -1 ? -1 : bracketedRoot((d) => score(d) - z, { low: -1, high: estimate });
  const high = estimate === 1 ? 1 : bracketedRoot((d) => score(d) + z, { low: estimate, high: 1 });
  return { method: "miettinenNurminen", first, second, level, estimate, interval: { low, high } };
}
