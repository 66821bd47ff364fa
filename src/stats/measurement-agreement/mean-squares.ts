import { requireReadings } from "../agreement/grade-readings.js";
import { completeReadings } from "../agreement/complete-readings.js";

/** Mean squares of a complete table of measurements, radiographs by raters. */
export interface MeanSquares {
  readonly images: number;
  readonly raters: number;
  /** Radiographs left out because a reading is missing. */
  readonly incomplete: number;
  readonly mean: number;
  /** Between radiographs, degrees of freedom images - 1. */
  readonly betweenImages: number;
  /** Between raters, raters - 1. */
  readonly betweenRaters: number;
  /** What neither explains, (images - 1)(raters - 1). */
  readonly residual: number;
  /** Within radiographs, images x (raters - 1): raters and residual together. */
  readonly withinImages: number;
}

/**
 * Two-way mean squares of the radiographs that every rater measured; null with fewer than two such radiographs.
 * @throws RangeError when readings are not a matrix of finite numbers with at least two raters
 * @see Shrout and Fleiss 1979, Psychol Bull 86:420-428, Table 3
 */
export function meanSquares(caller: string, readings: readonly (readonly (number | null)[])[]): MeanSquares | null {
  const raters = requireReadings(caller, readings);
  const complete = completeReadings(readings);
  const images = complete.length;
  if (images < 2) return null;
  const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const mean = average(complete.flat());
  const rows = complete.map(average);
  const columns = complete[0]!.map((_, rater) => average(complete.map((row) => row[rater]!)));
  const rowSquares = raters * rows.reduce((sum, row) => sum + (row - mean) ** 2, 0);
  const columnSquares = images * columns.reduce((sum, column) => sum + (column - mean) ** 2, 0);
  const residualSquares = complete.reduce(
    (sum, row, i) => sum + row.reduce((s, value, j) => s + (value - rows[i]! - columns[j]! + mean) ** 2, 0),
    0,
  );
  return {
    images,
    raters,
    incomplete: readings.length - images,
    mean,
    betweenImages: rowSquares / (images - 1),
    betweenRaters: columnSquares / (raters - 1),
    residual: residualSquares / ((images - 1) * (raters - 1)),
    withinImages: (columnSquares + residualSquares) / (images * (raters - 1)),
  };
}
