import type { PooledCoefficient } from "./pooled-coefficient.js";

/** Spread of a coefficient when radiographs are left out one by one. */
export interface Jackknife {
  /** Null when leaving one out makes the coefficient undefined, or when there is only one. */
  readonly standardError: number | null;
  /** For the BCa interval; 0 when every value is alike. */
  readonly acceleration: number;
}

/**
 * Leave-one-out standard error and acceleration, one evaluation for each kind of radiograph.
 * @see Efron 1987, J Am Stat Assoc 82:171-185, equation 6.6 for the acceleration
 */
export function jackknife({ times, value }: PooledCoefficient): Jackknife {
  const n = times.reduce((sum, count) => sum + count, 0);
  const without = new Float64Array(times.length);
  for (let kind = 0; kind < times.length; kind++) {
    if (times[kind] === 0) continue;
    times[kind]!--;
    without[kind] = n > 1 ? value(times) : NaN;
    times[kind]!++;
    if (Number.isNaN(without[kind])) return { standardError: null, acceleration: 0 };
  }
  const mean = without.reduce((sum, each, kind) => sum + times[kind]! * each, 0) / n;
  let squares = 0;
  let cubes = 0;
  without.forEach((each, kind) => {
    squares += times[kind]! * (mean - each) ** 2;
    cubes += times[kind]! * (mean - each) ** 3;
  });
  const standardError = Math.sqrt(((n - 1) / n) * squares);
  return { standardError, acceleration: squares > 0 ? cubes / (6 * squares ** 1.5) : 0 };
}
