import type { Filled } from "./binomial-masses.js";
import { proportionInterval, type ProportionMethod } from "./proportion-intervals.js";

/** Limits of one method at every count from 0 to the trials. */
export interface Limits {
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly width: Float64Array;
}

/** Limits at every count, cut to the possible range; both rise with the count, to the last digit. */
export function limitsOf(trials: number, method: ProportionMethod, level: number): Limits {
  const low = new Float64Array(trials + 1);
  const high = new Float64Array(trials + 1);
  for (let successes = 0; successes <= trials; successes++) {
    const { interval } = proportionInterval({ successes, trials }, { method, level });
    low[successes] = Math.max(0, interval.low, low[successes - 1] ?? 0);
    high[successes] = Math.max(Math.min(1, interval.high), high[successes - 1] ?? 0);
  }
  return { low, high, width: high.map((end, k) => end - low[k]!) };
}

/** Chance of the counts whose interval holds p: a run of counts, as both limits rise. */
export function covered({ low, high }: Limits, p: number, sums: Float64Array, { from, to }: Filled): number {
  const first = Math.max(from, firstAtLeast(high, p));
  const last = Math.min(to, firstAbove(low, p) - 1);
  return first > last ? 0 : Math.min(1, sums[last + 1]! - sums[first]!);
}

/** Expectation over the counts. */
export function expected(values: Float64Array, masses: Float64Array, { from, to }: Filled): number {
  let sum = 0;
  for (let k = from; k <= to; k++) sum += masses[k]! * values[k]!;
  return sum;
}

/** Place of the first value of at least p; the length if there is none. */
function firstAtLeast(rising: Float64Array, p: number): number {
  let [from, to] = [0, rising.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rising[middle]! >= p) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** Place of the first value above p; the length if there is none. */
function firstAbove(rising: Float64Array, p: number): number {
  let [from, to] = [0, rising.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rising[middle]! > p) to = middle;
    else from = middle + 1;
  }
  return from;
}
