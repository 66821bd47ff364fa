import { requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { tableMargins, type SquareTable } from "./square-table.js";

export interface AgreementWithin {
  readonly method: "agreement within a distance, Wilson interval";
  /** Grades apart that still count as agreement. */
  readonly distance: number;
  readonly agreeing: number;
  readonly n: number;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/**
 * Radiographs on which two raters gave the same grade, or grades no further apart than a distance.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @param options.distance grades apart, 0 (the default) for the same grade
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when the table, the distance or the level are out of range
 * @see Wilson 1927, J Am Stat Assoc 22:209-212, for the interval
 * @example agreementWithin([[12, 4, 0], [5, 10, 4], [1, 4, 9]], { distance: 1 }).agreeing // => 48
 */
export function agreementWithin(
  table: SquareTable,
  options: { readonly distance?: number; readonly level?: number } = {},
): AgreementWithin {
  requireOptions("agreementWithin", options, ["distance", "level"]);
  const { distance = 0, level = 0.95 } = options;
  if (!(Number.isInteger(distance) && distance >= 0))
    throw new RangeError(`agreementWithin: distance must be an integer of at least 0, got ${distance}`);
  const { n } = tableMargins("agreementWithin", table);
  let agreeing = 0;
  table.forEach((row, i) => row.forEach((count, j) => (agreeing += Math.abs(i - j) <= distance ? count : 0)));
  const { estimate, interval } = wilson(agreeing, n, { level });
  return {
    method: "agreement within a distance, Wilson interval",
    distance,
    agreeing,
    n,
    level,
    estimate,
    interval,
  };
}
