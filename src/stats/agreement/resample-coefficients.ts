import { random } from "../../numeric/random.js";
import type { Interval, NotEstimable } from "../types.js";
import { bcaLimits } from "./bca-limits.js";
import { jackknife } from "./jackknife.js";
import type { PooledCoefficient } from "./pooled-coefficient.js";

export interface ResampleOptions {
  /** Default 2,000. */
  readonly resamples?: number;
  /** Integer, 0 to 2^32 - 1; default 1. */
  readonly seed?: number;
  /** Coverage in (0, 1); default 0.95. */
  readonly level?: number;
}

/** The data's value of a coefficient with its BCa limits. */
export type Resampled =
  | {
      readonly estimate: number;
      readonly interval: Interval | NotEstimable;
      /** Resamples in which the coefficient was undefined: they are left out. */
      readonly undefinedResamples: number;
    }
  | NotEstimable;

/**
 * BCa limits of several coefficients from the same resamples of radiographs, one draw serving all of them.
 *
 * @param coefficients all prepared from the same radiographs in the same order
 * @see Efron and Tibshirani 1993, An Introduction to the Bootstrap, chapter 14
 */
export function resampleCoefficients(
  coefficients: readonly PooledCoefficient[],
  { resamples = 2000, seed = 1, level = 0.95 }: ResampleOptions,
): readonly Resampled[] {
  const estimates = coefficients.map(({ times, value }) => value(times));
  const values = draw(coefficients, resamples, seed);
  return coefficients.map((coefficient, k): Resampled => {
    const estimate = estimates[k]!;
    if (Number.isNaN(estimate)) return { estimate: null, because: "the data leave this coefficient undefined" };
    const defined = values[k]!.filter((value) => !Number.isNaN(value));
    const limits = bcaLimits(defined, estimate, jackknife(coefficient).acceleration, level);
    const interval = limits ?? { estimate: null, because: "every resample gave the same value" };
    return { estimate, interval, undefinedResamples: resamples - defined.length };
  });
}

function draw(coefficients: readonly PooledCoefficient[], resamples: number, seed: number): Float64Array[] {
  const stream = random(seed);
  const images = coefficients[0]?.kindOf.length ?? 0;
  const drawn = new Int32Array(images);
  const values = coefficients.map(() => new Float64Array(resamples));
  const times = coefficients.map((coefficient) => new Float64Array(coefficient.times.length));
  for (let resample = 0; resample < resamples; resample++) {
    drawn.fill(0);
    for (let i = 0; i < images; i++) drawn[Math.floor(stream.uniform() * images)]!++;
    coefficients.forEach((coefficient, k) => {
      count(drawn, coefficient.kindOf, times[k]!);
      values[k]![resample] = coefficient.value(times[k]!);
    });
  }
  return values;
}

function count(drawn: Int32Array, kindOf: Int32Array, times: Float64Array): void {
  times.fill(0);
  for (let image = 0; image < drawn.length; image++) {
    const kind = kindOf[image]!;
    if (kind >= 0) times[kind]! += drawn[image]!;
  }
}
