import { studentTCdf, studentTQuantile } from "../../numeric/student-t.js";
import type { Interval, NotEstimable } from "../types.js";

/** A t statistic with its limits and two-sided p. */
export interface TResult {
  readonly t: number;
  readonly df: number;
  readonly p: number;
  readonly standardError: number;
  readonly interval: Interval;
}

/**
 * Limits and two-sided p of an estimate by Student's t, or null with the reason when its standard error is 0.
 *
 * @param estimate any finite number
 * @param by.standardError zero or more
 * @param by.df degrees of freedom, above 0, not necessarily whole
 * @param by.level coverage in (0, 1)
 * @example tResult(2, { standardError: 1, df: 10, level: 0.95 }).interval.high // => 4.22813885198627
 */
export function tResult(
  estimate: number,
  by: { readonly standardError: number; readonly df: number; readonly level: number },
): TResult | NotEstimable {
  const { standardError, df, level } = by;
  if (standardError === 0) return { estimate: null, because: "the values do not vary" };
  const t = estimate / standardError;
  const half = studentTQuantile((1 + level) / 2, df) * standardError;
  const p = Math.min(1, 2 * studentTCdf(-Math.abs(t), df));
  return { t, df, p, standardError, interval: { low: estimate - half, high: estimate + half } };
}
