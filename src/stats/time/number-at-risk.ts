import { requireNumbers } from "../guards.js";

/**
 * How many cases were still seen at each of some times, for the row under a curve.
 *
 * @param times how long each case was seen
 * @param at times asked for, in the same unit
 * @throws RangeError when a number is not finite
 * @example numberAtRisk([6, 12, 12, 30], [0, 12, 24]) // => [4, 3, 1]
 */
export function numberAtRisk(times: readonly number[], at: readonly number[]): readonly number[] {
  requireNumbers("numberAtRisk", "times", times, 0);
  requireNumbers("numberAtRisk", "at", at, 0);
  return at.map((point) => times.filter((time) => time >= point).length);
}
