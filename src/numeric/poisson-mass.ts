import { deviance } from "./deviance.js";
import { stirlingRemainder } from "./stirling.js";

/**
 * Poisson mass at real x >= 0: mean^x e^-mean / Gamma(x + 1). Unguarded kernel.
 *
 * @see Loader 2000, Fast and accurate computation of binomial probabilities (saddle-point form)
 */
export function poissonMass(x: number, mean: number): number {
  if (x < 0) return 0;
  if (mean === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-mean);
  return Math.exp(-stirlingRemainder(x) - deviance(x, mean)) / Math.sqrt(2 * Math.PI * x);
}
