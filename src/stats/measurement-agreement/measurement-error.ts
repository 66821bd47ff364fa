import { chiSquareQuantile } from "../../numeric/chi-square.js";
import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { meanSquares, type MeanSquares } from "./mean-squares.js";

/** Whether systematic differences between the raters count as error. */
export const errorTypes = ["agreement", "consistency"] as const;
export type ErrorType = (typeof errorTypes)[number];

export interface MeasurementError {
  readonly method: "standard error of measurement from two-way mean squares";
  readonly type: ErrorType;
  readonly level: number;
  readonly images: number;
  readonly raters: number;
  readonly incomplete: number;
  /** Spread of one reading about the true value, in the unit of the readings. */
  readonly estimate: number;
  /** By chi-square; for agreement with Satterthwaite's degrees of freedom. */
  readonly interval: Interval;
  /** Degrees of freedom of the interval. */
  readonly df: number;
  /** Two readings of one radiograph differ by less than this with probability `level`. */
  readonly smallestDetectableChange: number;
}

/**
 * Standard error of measurement and the smallest detectable change, from readings of the same radiographs by several raters.
 *
 * @param readings measurements, one row a radiograph, one column a rater, null where not read (such rows are left out)
 * @param options.type "agreement" counts differences between raters' averages as error, "consistency" does not
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when readings or level are out of range; TypeError for an unknown type or option
 * @see de Vet et al. 2006, J Clin Epidemiol 59:1033-1039; Satterthwaite 1946, Biometrics Bull 2:110-114
 * @example measurementError([[30, 32], [41, 40], [55, 59], [22, 21]], { type: "consistency" }).estimate // => 1.7320508
 */
export function measurementError(
  readings: readonly (readonly (number | null)[])[],
  options: { readonly type: ErrorType; readonly level?: number },
): MeasurementError | NotEstimable {
  requireOptions("measurementError", options, ["type", "level"]);
  const { type, level = 0.95 } = options;
  requireLevel("measurementError", level);
  if (!errorTypes.includes(type))
    throw new TypeError(`measurementError: type must be one of ${errorTypes.join(", ")}, got "${String(type)}"`);
  const squares = meanSquares("measurementError", readings);
  if (squares === null) return { estimate: null, because: "fewer than two radiographs were measured by every rater" };
  const { variance, df } = type === "consistency" ? residualOnly(squares) : withRaters(squares);
  const limit = (p: number): number => Math.sqrt((df * variance) / chiSquareQuantile(p, df));
  const estimate = Math.sqrt(variance);
  return {
    method: "standard error of measurement from two-way mean squares",
    type,
    level,
    images: squares.images,
    raters: squares.raters,
    incomplete: squares.incomplete,
    estimate,
    interval: { low: limit((1 + level) / 2), high: limit((1 - level) / 2) },
    df,
    smallestDetectableChange: normalQuantile((1 + level) / 2) * Math.SQRT2 * estimate,
  };
}

function residualOnly({ images, raters, residual }: MeanSquares): { variance: number; df: number } {
  return { variance: residual, df: (images - 1) * (raters - 1) };
}

function withRaters({ images: n, raters: k, betweenRaters, residual }: MeanSquares): { variance: number; df: number } {
  // A negative variance of raters is taken as none: then all readings of a radiograph are pure error.
  if (betweenRaters <= residual) return residualOnly({ images: n, raters: k, residual } as MeanSquares);
  const variance = (betweenRaters - residual) / n + residual;
  const rest = ((n - 1) * residual) / n;
  const df = variance ** 2 / ((betweenRaters / n) ** 2 / (k - 1) + rest ** 2 / ((n - 1) * (k - 1)));
  return { variance, df };
}
