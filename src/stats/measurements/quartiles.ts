import { quantileSorted } from "simple-statistics";
import { requireNumbers } from "../guards.js";

export interface Quartiles {
  readonly method: "quartiles, linear interpolation (type 7)";
  readonly n: number;
  readonly low: number;
  readonly q1: number;
  readonly median: number;
  readonly q3: number;
  readonly high: number;
}

/**
 * Both extremes, both quartiles and the median of a sample.
 *
 * @param values finite numbers, at least one
 * @throws RangeError when there is no value or one is not finite
 * @see Hyndman and Fan 1996, Am Stat 50:361-365, definition 7
 * @example quartiles([1, 2, 3, 4]) // => { q1: 1.75, median: 2.5, q3: 3.25 }
 */
export function quartiles(values: readonly number[]): Quartiles {
  requireNumbers("quartiles", "values", values, 1);
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => quantileSorted(sorted, share);
  return {
    method: "quartiles, linear interpolation (type 7)",
    n: sorted.length,
    low: sorted[0]!,
    q1: at(0.25),
    median: at(0.5),
    q3: at(0.75),
    high: sorted.at(-1)!,
  };
}
