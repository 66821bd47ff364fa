import { requirePositive } from "./guards.js";
import { stirlingRemainder } from "./stirling.js";

/**
 * Natural logarithm of the beta function, without the cancellation of three log-gammas.
 *
 * @param a positive
 * @param b positive
 * @throws RangeError when either is not positive and finite
 * @see DLMF 5.12.1, each gamma by Stirling's formula with its remainder (DLMF 5.11.1)
 * @example logBeta(2, 3) // => -2.48490664979
 */
export function logBeta(a: number, b: number): number {
  requirePositive("logBeta", "a", a);
  requirePositive("logBeta", "b", b);
  const n = a + b;
  const powers = -a * Math.log1p(b / a) - b * Math.log1p(a / b);
  const remainder = stirlingRemainder(a) + stirlingRemainder(b) - stirlingRemainder(n);
  return powers + remainder + 0.5 * Math.log(2 * Math.PI * (1 / a + 1 / b));
}
