import { requireWhole } from "./guards.js";
import { stirlingRemainder } from "./stirling.js";

/**
 * Natural logarithm of the number of ways to choose k of n, without the cancellation of three log-factorials.
 *
 * @param n integer, at least 0
 * @param k integer, 0 to n
 * @throws RangeError when either is out of range
 * @see Loader 2000 (saddle-point form, solved for the binomial coefficient)
 * @example logChoose(5, 2) // => 2.302585092994046
 */
export function logChoose(n: number, k: number): number {
  requireWhole("logChoose", "n", n);
  requireWhole("logChoose", "k", k, n);
  const fewer = Math.min(k, n - k);
  if (fewer === 0) return 0;
  if (fewer === 1) return Math.log(n);
  const rest = n - fewer;
  const remainder = stirlingRemainder(n) - stirlingRemainder(fewer) - stirlingRemainder(rest);
  // n ln n - k ln k - (n - k) ln (n - k), as one product a side.
  const entropy = fewer * Math.log(n / fewer) - rest * Math.log1p(-fewer / n);
  return remainder + entropy + 0.5 * Math.log(n / (2 * Math.PI * fewer * rest));
}
