import { studentTQuantile, studentTUpper } from "../../numeric/student-t.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";

export interface ProportionalBias {
  readonly method: "regression of the difference on the mean";
  readonly level: number;
  readonly n: number;
  /** Change of the difference (first less second) for one unit more of their mean. */
  readonly slope: { readonly estimate: number; readonly interval: Interval };
  readonly intercept: number;
  /** Two-sided, of slope 0; also Pitman's test that both measurements vary alike. */
  readonly p: number;
}

/**
 * Whether the difference of two measurements grows with what is measured.
 *
 * @param first measurements, null where missing
 * @param second the same radiographs again
 * @throws RangeError when lengths differ, a value is not finite or the level out of range; TypeError for unknown options
 * @returns the slope, or why there is none: fewer than three pairs, or all means alike
 * @see Bland and Altman 1999, Stat Methods Med Res 8:135-160, section 3.2; Pitman 1939, Biometrika 31:9-12
 * @example proportionalBias([10, 12, 15, 20], [11, 11, 13, 19]).slope.estimate // => 0.1412066752
 */
export function proportionalBias(
  first: readonly (number | null)[],
  second: readonly (number | null)[],
  options: { readonly level?: number } = {},
): ProportionalBias | NotEstimable {
  requireOptions("proportionalBias", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("proportionalBias", level);
  const points = pairedPoints(first, second);
  const n = points.length;
  if (n < 3) return { estimate: null, because: "fewer than three radiographs were measured twice" };
  const meanX = points.reduce((sum, point) => sum + point.mean, 0) / n;
  const meanY = points.reduce((sum, point) => sum + point.difference, 0) / n;
  const xx = points.reduce((sum, point) => sum + (point.mean - meanX) ** 2, 0);
  if (xx === 0) return { estimate: null, because: "all means are the same, so there is no slope" };
  const xy = points.reduce((sum, point) => sum + (point.mean - meanX) * (point.difference - meanY), 0);
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  const left = points.reduce((sum, point) => sum + (point.difference - intercept - slope * point.mean) ** 2, 0);
  const error = Math.sqrt(left / (n - 2) / xx);
  const half = studentTQuantile((1 + level) / 2, n - 2) * error;
  return {
    method: "regression of the difference on the mean",
    level,
    n,
    slope: { estimate: slope, interval: { low: slope - half, high: slope + half } },
    intercept,
    p: error > 0 ? 2 * studentTUpper(Math.abs(slope) / error, n - 2) : slope === 0 ? 1 : 0,
  };
}

function pairedPoints(first: readonly (number | null)[], second: readonly (number | null)[]) {
  if (first.length !== second.length)
    throw new RangeError(
      `proportionalBias: both measurements must have the same radiographs, got ${first.length} and ${second.length}`,
    );
  return first.flatMap((a, image) => {
    const b = second[image]!;
    for (const value of [a, b])
      if (value !== null && !Number.isFinite(value))
        throw new RangeError(`proportionalBias: measurement ${image + 1} must be a finite number, got ${value}`);
    return a === null || b === null ? [] : [{ mean: (a + b) / 2, difference: a - b }];
  });
}
