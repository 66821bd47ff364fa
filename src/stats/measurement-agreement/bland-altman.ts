import { noncentralTQuantile } from "../../numeric/noncentral-t.js";
import { normalQuantile } from "../../numeric/normal.js";
import { studentTQuantile } from "../../numeric/student-t.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";

export interface BlandAltmanOptions {
  /** Share of differences that the limits of agreement are to hold; default 0.95. */
  readonly share?: number;
  /** Coverage of the intervals around bias and limits, in (0, 1); default 0.95. */
  readonly level?: number;
}

export interface LimitOfAgreement {
  readonly estimate: number;
  /** Exact for normal differences, by noncentral t. */
  readonly exact: Interval;
  /** Large-sample form of 1986, for comparison with papers: too narrow away from the mean when radiographs are few. */
  readonly approximate: Interval;
}

export interface BlandAltman {
  readonly method: "Bland-Altman limits of agreement, exact limits by noncentral t";
  readonly share: number;
  readonly level: number;
  readonly n: number;
  /** Radiographs left out because one or both readings are missing. */
  readonly incomplete: number;
  /** Mean of first less second. */
  readonly bias: { readonly estimate: number; readonly interval: Interval };
  readonly standardDeviation: number;
  readonly lower: LimitOfAgreement;
  readonly upper: LimitOfAgreement;
}

/**
 * Bias and limits of agreement of two measurements of the same radiographs, first less second.
 *
 * @param first measurements, null where missing
 * @param second the same radiographs again
 * @throws RangeError when lengths differ, a value is not finite, or an option is out of range; TypeError for unknown options
 * @returns the limits, or why there are none: fewer than two pairs, or all differences alike
 * @see Bland and Altman 1986, Lancet i:307-310; exact limits: Carkeet 2015, Optom Vis Sci 92:e71-80
 * @example blandAltman([10, 12, 15, 20], [11, 11, 13, 19]).bias.estimate // => 0.75
 */
export function blandAltman(
  first: readonly (number | null)[],
  second: readonly (number | null)[],
  options: BlandAltmanOptions = {},
): BlandAltman | NotEstimable {
  requireOptions("blandAltman", options, ["share", "level"]);
  const { share = 0.95, level = 0.95 } = options;
  requireLevel("blandAltman", level);
  if (!(share > 0 && share < 1)) throw new RangeError(`blandAltman: share must lie between 0 and 1, got ${share}`);
  const differences = paired(first, second);
  const n = differences.length;
  if (n < 2) return { estimate: null, because: "fewer than two radiographs were measured twice" };
  const mean = differences.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  if (sd === 0)
    return {
      estimate: null,
      because: `all differences are the same (${mean}), so there is no spread to set limits by`,
    };
  const half = (studentTQuantile((1 + level) / 2, n - 1) * sd) / Math.sqrt(n);
  return {
    method: "Bland-Altman limits of agreement, exact limits by noncentral t",
    share,
    level,
    n,
    incomplete: first.length - n,
    bias: { estimate: mean, interval: { low: mean - half, high: mean + half } },
    standardDeviation: sd,
    lower: limit(mean, sd, n, normalQuantile((1 - share) / 2), level),
    upper: limit(mean, sd, n, normalQuantile((1 + share) / 2), level),
  };
}

/** The quantile mean + z sd of normal differences: its pivot is noncentral t with noncentrality z sqrt(n). */
function limit(mean: number, sd: number, n: number, z: number, level: number): LimitOfAgreement {
  const exact = (p: number): number =>
    mean + (noncentralTQuantile(p, { df: n - 1, noncentrality: z * Math.sqrt(n) }) * sd) / Math.sqrt(n);
  const estimate = mean + z * sd;
  const half = studentTQuantile((1 + level) / 2, n - 1) * sd * Math.sqrt((1 + z ** 2 / 2) / n);
  return {
    estimate,
    exact: { low: exact((1 - level) / 2), high: exact((1 + level) / 2) },
    approximate: { low: estimate - half, high: estimate + half },
  };
}

function paired(first: readonly (number | null)[], second: readonly (number | null)[]): number[] {
  if (first.length !== second.length)
    throw new RangeError(
      `blandAltman: both measurements must have the same radiographs, got ${first.length} and ${second.length}`,
    );
  const differences: number[] = [];
  first.forEach((a, image) => {
    const b = second[image]!;
    for (const value of [a, b])
      if (value !== null && !Number.isFinite(value))
        throw new RangeError(`blandAltman: measurement ${image + 1} must be a finite number, got ${value}`);
    if (a !== null && b !== null) differences.push(a - b);
  });
  return differences;
}
