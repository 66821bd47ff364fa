import { chiSquareQuantile } from "../../numeric/chi-square.js";
import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import type { BlandAltmanOptions } from "./bland-altman.js";

export interface RepeatedBlandAltman {
  readonly method: "limits of agreement with repeated pairs (Bland and Altman 2007), limits by Zou 2013";
  readonly share: number;
  readonly level: number;
  readonly images: number;
  readonly pairs: number;
  /** Mean over radiographs of their mean difference. */
  readonly bias: number;
  /** Spread of one difference: between radiographs and within. */
  readonly standardDeviation: number;
  readonly withinStandardDeviation: number;
  readonly lower: { readonly estimate: number; readonly interval: Interval };
  readonly upper: { readonly estimate: number; readonly interval: Interval };
}

/**
 * Limits of agreement when each radiograph gave several pairs of measurements.
 *
 * @param differences for each radiograph its differences, first less second; at least one each
 * @throws RangeError when a radiograph has none, a value is not finite, or an option is out of range
 * @returns the limits, or why there are none: fewer than two radiographs, or none with repeated pairs
 * @see Bland and Altman 2007, J Biopharm Stat 17:571-582; Zou 2013, Stat Methods Med Res 22:630-642
 * @example blandAltmanRepeated([[1, 2], [0, -1], [3, 2, 1]]).bias // => 1
 */
export function blandAltmanRepeated(
  differences: readonly (readonly number[])[],
  options: BlandAltmanOptions = {},
): RepeatedBlandAltman | NotEstimable {
  requireOptions("blandAltmanRepeated", options, ["share", "level"]);
  const { share = 0.95, level = 0.95 } = options;
  requireLevel("blandAltmanRepeated", level);
  if (!(share > 0 && share < 1))
    throw new RangeError(`blandAltmanRepeated: share must lie between 0 and 1, got ${share}`);
  requireDifferences(differences);
  const images = differences.length;
  const pairs = differences.reduce((sum, row) => sum + row.length, 0);
  if (images < 2) return { estimate: null, because: "fewer than two radiographs have a pair of measurements" };
  if (pairs === images) return { estimate: null, because: "no radiograph has repeated pairs" };
  const means = differences.map((row) => row.reduce((sum, value) => sum + value, 0) / row.length);
  const bias = means.reduce((sum, mean) => sum + mean, 0) / images;
  const betweenMeans = means.reduce((sum, mean) => sum + (mean - bias) ** 2, 0) / (images - 1);
  const within =
    differences.reduce((sum, row, i) => sum + row.reduce((s, value) => s + (value - means[i]!) ** 2, 0), 0) /
    (pairs - images);
  // Means of few repeats vary less than single differences: give back what averaging took away.
  const added = 1 - differences.reduce((sum, row) => sum + 1 / row.length, 0) / images;
  const total = betweenMeans + added * within;
  if (total === 0) return { estimate: null, because: "all differences are the same, so there is no spread" };
  const spread = {
    total,
    parts: [
      [betweenMeans, images - 1],
      [added * within, pairs - images],
    ] as const,
  };
  const limit = (side: -1 | 1) => limitOf(side, bias, betweenMeans / images, spread, { share, level });
  return {
    method: "limits of agreement with repeated pairs (Bland and Altman 2007), limits by Zou 2013",
    share,
    level,
    images,
    pairs,
    bias,
    standardDeviation: Math.sqrt(total),
    withinStandardDeviation: Math.sqrt(within),
    lower: limit(-1),
    upper: limit(1),
  };
}

interface Spread {
  readonly total: number;
  /** Variances that add to the total, with their degrees of freedom. */
  readonly parts: readonly (readonly [number, number])[];
}

/** Recovers the variance of the limit from the separate intervals of bias and spread. */
function limitOf(
  side: -1 | 1,
  bias: number,
  biasVariance: number,
  { total, parts }: Spread,
  { share, level }: Required<BlandAltmanOptions>,
): { estimate: number; interval: Interval } {
  const z = normalQuantile((1 + share) / 2);
  const off = (p: number): number =>
    Math.sqrt(parts.reduce((sum, [value, df]) => sum + (value * (1 - df / chiSquareQuantile(p, df))) ** 2, 0));
  const sd = Math.sqrt(total);
  const shorter = sd - Math.sqrt(Math.max(0, total - off((1 + level) / 2)));
  const longer = Math.sqrt(total + off((1 - level) / 2)) - sd;
  const ofBias = normalQuantile((1 + level) / 2) ** 2 * biasVariance;
  const inward = Math.sqrt(ofBias + (z * shorter) ** 2);
  const outward = Math.sqrt(ofBias + (z * longer) ** 2);
  const estimate = bias + side * z * sd;
  const interval =
    side === 1
      ? { low: estimate - inward, high: estimate + outward }
      : { low: estimate - outward, high: estimate + inward };
  return { estimate, interval };
}

function requireDifferences(differences: readonly (readonly number[])[]): void {
  differences.forEach((row, image) => {
    if (row.length === 0)
      throw new RangeError(`blandAltmanRepeated: radiograph ${image + 1} must have at least one difference, got none`);
    for (const value of row)
      if (!Number.isFinite(value))
        throw new RangeError(
          `blandAltmanRepeated: difference of radiograph ${image + 1} must be a finite number, got ${value}`,
        );
  });
}
