import { normalUpper, normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel } from "../guards.js";
import type { Interval } from "../types.js";

/** What a printed estimate and its interval say about the p value that belongs to them. */
export interface IntervalP {
  readonly method: "intervalP";
  readonly standardError: number;
  readonly z: number;
  readonly p: number;
}

/**
 * The two-sided p that a large-sample estimate and its interval imply, on the scale in which the interval is symmetrical
 * (ratios: pass logarithms).
 * @param estimate on that scale
 * @param interval its limits, low below high
 * @param options.level coverage of the interval, in (0, 1); default 0.95
 * @param options.null value that means no effect; default 0
 * @throws RangeError when the limits are not finite or not in order
 * @see Altman and Bland 2011, BMJ 343:d2304
 * @example intervalP(12, { low: 2, high: 22 }).p // => 0.0186749
 */
export function intervalP(
  estimate: number,
  interval: Interval,
  options: { readonly level?: number; readonly null?: number } = {},
): IntervalP {
  const { level = 0.95, null: none = 0 } = options;
  requireLevel("intervalP", level);
  if (!(Number.isFinite(interval.low) && interval.high > interval.low && interval.high < Infinity))
    throw new RangeError(`intervalP: limits must be finite and in order, got ${interval.low} and ${interval.high}`);
  const standardError = (interval.high - interval.low) / (2 * normalUpperQuantile((1 - level) / 2));
  const z = (estimate - none) / standardError;
  return { method: "intervalP", standardError, z, p: Math.min(1, 2 * normalUpper(Math.abs(z))) };
}

/** The absolute z that belongs to a two-sided p in (0, 1]. */
export const zOfP = (p: number): number => normalUpperQuantile(p / 2);
