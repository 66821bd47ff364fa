import { newcombe } from "./newcombe.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import type { Interval } from "../types.js";
import { requireOptions } from "../guards.js";

/** Number needed to treat: the reciprocal of the difference of two proportions and of its Newcombe limits. */
export interface NumberNeededToTreatResult extends TwoGroups {
  readonly method: "numberNeededToTreat";
  readonly level: number;
  /** Cases treated as in the first group for one success more; negative: one success fewer; Infinity: no difference. */
  readonly estimate: number;
  /** Newcombe interval of the difference that the ranges come from. */
  readonly difference: Interval;
  /**
   * The values compatible with the data: one range; or two, from minus infinity to a negative number and from a positive
   * one to infinity, when the interval of the difference spans 0.
   */
  readonly ranges: readonly Interval[];
}

/**
 * Number needed to treat with its interval, disjoint when the difference may be 0.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Altman 1998, BMJ 317:1309-1312
 * @example numberNeededToTreat({ first: { successes: 56, trials: 70 }, second: { successes: 48, trials: 80 } }).ranges // => [{ low: 2.995, high: 19.073 }]
 */
export function numberNeededToTreat(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): NumberNeededToTreatResult {
  requireTwoGroups("numberNeededToTreat", { first, second });
  requireOptions("numberNeededToTreat", options, ["level"]);
  const { level, estimate, interval } = newcombe({ first, second }, options);
  const asked = { method: "numberNeededToTreat", first, second, level, difference: interval } as const;
  return { ...asked, estimate: estimate === 0 ? Infinity : 1 / estimate, ranges: reciprocals(interval) };
}

/** Reciprocals of the values in an interval that may hold 0. */
export function reciprocals({ low, high }: Interval): readonly Interval[] {
  if (low < 0 && high > 0)
    return [
      { low: -Infinity, high: 1 / low },
      { low: 1 / high, high: Infinity },
    ];
  return [{ low: high === 0 ? -Infinity : 1 / high, high: low === 0 ? Infinity : 1 / low }];
}
