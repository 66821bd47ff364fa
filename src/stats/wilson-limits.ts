import type { Interval } from "./types.js";

/**
 * Wilson's limits for a count that need not be whole, such as an effective one. Unguarded kernel.
 *
 * @param z normal quantile of the level, positive
 */
export function wilsonLimits(successes: number, trials: number, z: number): Interval {
  const root = z * Math.sqrt(z ** 2 + 4 * successes * ((trials - successes) / trials));
  const centre = 2 * successes + z ** 2;
  // The lower root by the product of both roots: exactly 0 without successes, and no cancellation near 0.
  const low = (2 * successes * (successes / trials)) / (centre + root);
  // Exactly 1 here; by arithmetic alone the upper end falls short of 1, or passes it, for many counts.
  const high = successes === trials ? 1 : (centre + root) / (2 * (trials + z ** 2));
  return { low, high };
}
