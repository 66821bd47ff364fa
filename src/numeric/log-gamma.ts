import { requirePositive } from "./guards.js";
import { LOG_SQRT_TWO_PI, stirlingRemainder } from "./stirling.js";

const EULER = 0.5772156649015329;

// zeta(k) - 1 for k = 2, 3, ..., as the nearest doubles
const zetaMinusOne = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853, 0.0004941886041194645,
  0.0002460865533080483, 0.00012271334757848915, 6.124813505870483e-5, 3.058823630702049e-5, 1.528225940865187e-5,
  7.637197637899763e-6, 3.81729326499984e-6, 1.908212716553939e-6, 9.539620338727962e-7, 4.769329867878064e-7,
  2.38450502727733e-7, 1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.4901554828365043e-8,
  7.45071178983543e-9, 3.725334024788457e-9,
];

/**
 * Natural logarithm of the gamma function, with full relative precision at its zeros 1 and 2 too.
 *
 * @param x positive
 * @throws RangeError when x is not positive and finite
 * @see DLMF 5.7.3 from 0.5 to 2.5, 5.11.1 above
 * @example logGamma(0.5) // => 0.5723649429247001
 */
export function logGamma(x: number): number {
  requirePositive("logGamma", "x", x);
  if (x < 0.5) return aroundTwo(x) - Math.log1p(x) - Math.log(x);
  if (x <= 1.5) return aroundTwo(x - 1) - Math.log1p(x - 1);
  if (x <= 2.5) return aroundTwo(x - 2);
  const n = x - 1;
  return stirlingRemainder(n) + (n + 0.5) * Math.log(n) - n + LOG_SQRT_TWO_PI;
}

/** ln Gamma(2 + z) for |z| <= 1/2. */
function aroundTwo(z: number): number {
  let sum = 0;
  for (let k = zetaMinusOne.length + 1; k >= 2; k--)
    sum = (((k % 2 === 0 ? 1 : -1) * zetaMinusOne[k - 2]!) / k + sum) * z;
  return z * (1 - EULER + sum);
}
