import { deviance } from "./deviance.js";
import { stirlingRemainder } from "./stirling.js";

const TWO_PI = 2 * Math.PI;

/**
 * Binomial mass at real x in [0, n], with p and q = 1 - p both given so that neither loses digits. Unguarded kernel.
 *
 * @see Loader 2000, Fast and accurate computation of binomial probabilities (saddle-point form)
 */
export function binomialMass(x: number, n: number, p: number, q: number): number {
  if (x < 0 || x > n) return 0;
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return x === n ? 1 : 0;
  if (x === 0) return n === 0 ? 1 : Math.exp(n * (p < 0.1 ? Math.log1p(-p) : Math.log(q)));
  if (x === n) return Math.exp(n * (q < 0.1 ? Math.log1p(-q) : Math.log(p)));
  const log =
    stirlingRemainder(n) -
    stirlingRemainder(x) -
    stirlingRemainder(n - x) -
    deviance(x, n * p) -
    deviance(n - x, n * q);
  return Math.exp(log) * Math.sqrt(n / (TWO_PI * x * (n - x)));
}
