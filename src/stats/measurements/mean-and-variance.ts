import { requireNumbers } from "../guards.js";

export interface MeanAndVariance {
  readonly n: number;
  readonly mean: number;
  /** Sample variance, divisor n - 1; null for one value. */
  readonly variance: number | null;
}

/**
 * Mean and sample variance in two passes, exactly constant values giving a variance of exactly 0.
 *
 * @param values finite numbers, at least one
 * @see Chan, Golub and LeVeque 1983, Am Stat 37:242-247 (corrected two-pass algorithm)
 * @example meanAndVariance([2, 4, 6]) // => { n: 3, mean: 4, variance: 4 }
 */
export function meanAndVariance(values: readonly number[]): MeanAndVariance {
  const n = values.length;
  const start = values[0]!;
  // Deviations from the first value, so that equal values have a mean that is exactly theirs.
  const mean = start + values.reduce((sum, value) => sum + (value - start), 0) / n;
  if (n === 1) return { n, mean, variance: null };
  let squares = 0;
  let rest = 0;
  for (const value of values) {
    squares += (value - mean) ** 2;
    rest += value - mean;
  }
  return { n, mean, variance: (squares - rest ** 2 / n) / (n - 1) };
}

/** Throws unless every value is finite and its square can be added up without overflow. */
export function requireSquares(caller: string, name: string, values: readonly number[], atLeast: number): void {
  requireNumbers(caller, name, values, atLeast);
  const wrong = values.findIndex((value) => Math.abs(value) > 1e150);
  if (wrong >= 0)
    throw new RangeError(`${caller}: ${name}[${wrong}] must be at most 1e150 in size, got ${values[wrong]}`);
}
