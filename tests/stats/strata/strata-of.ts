import type { Stratum } from "../../../src/stats/strata/strata.js";

/** Strata from rows of four cells: success and failure of the first group, then of the second. */
export function strataOf(rows: readonly (readonly number[])[]): Stratum[] {
  return rows.map(([a, b, c, d]) => ({
    first: { successes: a!, trials: a! + b! },
    second: { successes: c!, trials: c! + d! },
  }));
}

/** The four cells of strata for R's `array(c(...), c(2, 2, K))`, whose columns are the outcomes. */
export function cellsForR(rows: readonly (readonly number[])[]): number[] {
  return rows.flatMap(([a, b, c, d]) => [a!, c!, b!, d!]);
}
