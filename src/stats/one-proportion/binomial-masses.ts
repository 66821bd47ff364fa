import { binomialMass } from "../../numeric/binomial-mass.js";

/** The counts, first and last, whose masses were written. */
export interface Filled {
  readonly from: number;
  readonly to: number;
}

/**
 * Writes all binomial masses above 1e-18 of the largest into their places, by the ratio recurrence from the mode; the
 * other places are left as they are. Unguarded.
 */
export function fillBinomialMasses(masses: Float64Array, trials: number, p: number): Filled {
  const mode = Math.min(trials, Math.floor((trials + 1) * p));
  const odds = p / (1 - p);
  const top = binomialMass(mode, trials, p, 1 - p);
  const least = top * 1e-18;
  masses[mode] = top;
  let from = mode;
  for (let mass = top; from > 0 && mass > least; from--) {
    mass *= from / ((trials - from + 1) * odds);
    masses[from - 1] = mass;
  }
  let to = mode;
  for (let mass = top; to < trials && mass > least; to++) {
    mass *= ((trials - to) / (to + 1)) * odds;
    masses[to + 1] = mass;
  }
  return { from, to };
}
