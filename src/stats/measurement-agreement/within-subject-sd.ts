import { chiSquareQuantile } from "../../numeric/chi-square.js";
import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";

export interface WithinSubjectSd {
  readonly method: "within-subject standard deviation from one-way analysis of variance";
  readonly level: number;
  /** Radiographs with two readings or more. */
  readonly images: number;
  readonly readings: number;
  readonly estimate: number;
  readonly df: number;
  readonly interval: Interval;
  /** Two readings of one radiograph differ by less than this with probability `level`. */
  readonly repeatability: number;
}

/**
 * Spread of repeated readings of the same radiograph, and the repeatability that follows from it.
 *
 * @param repeats for each radiograph its readings, any number, null where not read; single readings carry nothing and are left out
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a reading is not finite or the level out of range; TypeError for unknown options
 * @see Bland and Altman 1996, BMJ 312:1654 and 313:744
 * @example withinSubjectSd([[30, 32], [41, 40], [55, 59], [22, 21, 24]]).estimate // => 1.7416467
 */
export function withinSubjectSd(
  repeats: readonly (readonly (number | null)[])[],
  options: { readonly level?: number } = {},
): WithinSubjectSd | NotEstimable {
  requireOptions("withinSubjectSd", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("withinSubjectSd", level);
  const rows = repeats.map((row) => row.filter((value) => value !== null)).filter((row) => row.length >= 2);
  for (const value of rows.flat())
    if (!Number.isFinite(value))
      throw new RangeError(`withinSubjectSd: a reading must be a finite number, got ${value}`);
  if (rows.length === 0) return { estimate: null, because: "no radiograph has two readings" };
  const df = rows.reduce((sum, row) => sum + row.length - 1, 0);
  const squares = rows.reduce((sum, row) => {
    const mean = row.reduce((total, value) => total + value, 0) / row.length;
    return sum + row.reduce((total, value) => total + (value - mean) ** 2, 0);
  }, 0);
  const estimate = Math.sqrt(squares / df);
  const limit = (p: number): number => Math.sqrt(squares / chiSquareQuantile(p, df));
  return {
    method: "within-subject standard deviation from one-way analysis of variance",
    level,
    images: rows.length,
    readings: rows.flat().length,
    estimate,
    df,
    interval: { low: limit((1 + level) / 2), high: limit((1 - level) / 2) },
    repeatability: normalQuantile((1 + level) / 2) * Math.SQRT2 * estimate,
  };
}
