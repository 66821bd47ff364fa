import type { Interval } from "./types.js";

/**
 * Wilson's limits for a count that need not be whole, such as an effective one. Unguarded kernel.
 *
 * @param z normal quantile of the level, positive
 */
export function wilsonLimits(successes: number, trials: number, z: number): Interval {
  const root = z * Math.sqrt(z ** 2 + 4 * successes * ((trials - successes) / trials));
  const centre = 2 * successes + z ** 2;
  // The lower root by the product of both roots: no cancellation near 0. Exactly 0 without successes, where a level so small
  // that z is 0 would leave 0 over 0.
  const low = successes === 0 ? 0 : (2 * successes * (successes / trials)) / (centre + root);
  // Exactly 1 here; by arithmetic alone the upper end falls short of 1, or passes it, for many counts.
  const high = successes === trials ? 1 : (centre + root) / (2 * (trials + z ** 2));
  return { low, high };
}
