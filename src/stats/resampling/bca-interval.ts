import { normalCdf, normalQuantile, normalUpperQuantile } from "../../numeric/normal.js";
import type { Interval, NotEstimable } from "../types.js";

export interface BcaInterval {
  readonly interval: Interval;
  readonly percentile: Interval;
  readonly standardError: number;
  readonly bias: number;
  readonly acceleration: number;
}

/**
 * Bias-corrected and accelerated limits from resampled and left-out values of a statistic. Values equal to the estimate
 * count one half below it, as a statistic of counts needs.
 *
 * @param of.estimate in the data themselves
 * @param of.values over resamples, at least one
 * @param of.left with each unit left out in turn, stratum by stratum
 * @param of.level coverage in (0, 1)
 * @returns the limits, or null with the reason when the resamples do not vary or all lie on one side of the estimate
 * @see Efron 1987, J Am Stat Assoc 82:171-185; Efron and Tibshirani 1993, An Introduction to the Bootstrap, section 14.3;
 *   several strata as in Davison and Hinkley 1997, section 5.3.2
 */
export function bcaInterval(of: {
  readonly estimate: number;
  readonly values: Float64Array;
  readonly left: readonly (readonly number[])[];
  readonly level: number;
}): BcaInterval | NotEstimable {
  const { estimate, left, level } = of;
  const values = of.values.slice().sort();
  // Sums in another order differ by rounding: that is no difference.
  const slack = 1e-12 * Math.max(Math.abs(estimate), Math.abs(values[0]!), Math.abs(values.at(-1)!));
  if (values.at(-1)! - values[0]! <= slack)
    return { estimate: null, because: "the statistic is the same in every resample" };
  let below = 0;
  for (const value of values) below += value < estimate - slack ? 1 : value <= estimate + slack ? 0.5 : 0;
  const share = below / values.length;
  if (share === 0 || share === 1)
    return { estimate: null, because: "every resample lies on the same side of the estimate" };

  const bias = normalQuantile(share);
  const acceleration = accelerationOf(left);
  const z = normalUpperQuantile((1 - level) / 2);
  const corrected = (end: number): number => {
    const shifted = bias + end;
    const stretch = 1 - acceleration * shifted;
    // A skewness so strong that the correction turns over: the limit is the extreme resample.
    if (stretch <= 0) return shifted > 0 ? 1 : 0;
    return normalCdf(bias + shifted / stretch);
  };
  return {
    interval: { low: quantileOf(values, corrected(-z)), high: quantileOf(values, corrected(z)) },
    percentile: { low: quantileOf(values, (1 - level) / 2), high: quantileOf(values, (1 + level) / 2) },
    standardError: deviationOf(values),
    bias,
    acceleration,
  };
}

/** One sixth of the skewness of the influence of the units, each stratum about its own mean; 0 when they are all alike. */
function accelerationOf(left: readonly (readonly number[])[]): number {
  const influences = left.flatMap((stratum) => {
    const mean = stratum.reduce((sum, value) => sum + value / stratum.length, 0);
    return stratum.map((value) => (1 - 1 / stratum.length) * (mean - value));
  });
  // Measured in the largest of them, so that no power overflows.
  const largest = influences.reduce((most, influence) => Math.max(most, Math.abs(influence)), 0);
  if (largest === 0) return 0;
  let [squares, cubes] = [0, 0];
  for (const influence of influences) {
    squares += (influence / largest) ** 2;
    cubes += (influence / largest) ** 3;
  }
  return cubes / (6 * squares ** 1.5);
}

/** Quantile of sorted values, type 7 of Hyndman and Fan 1996. */
function quantileOf(sorted: Float64Array, p: number): number {
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (at - below) * (high - low);
}

function deviationOf(values: Float64Array): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}
