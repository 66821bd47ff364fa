/** ln sqrt(2 pi) */
export const LOG_SQRT_TWO_PI = 0.9189385332046728;

// Coefficients of 1/n, 1/n^3, ... in DLMF 5.11.1: B_2k / (2k (2k - 1)).
const series = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

// Halves from 0.5 to 15.5, the arguments that counts and degrees of freedom bring.
const ofHalves = Array.from({ length: 32 }, (_, twice) => (twice === 0 ? 0 : shifted(twice / 2)));

/**
 * What Stirling's formula leaves: ln Gamma(x + 1) - (x + 1/2) ln x + x - ln sqrt(2 pi), for x > 0.
 *
 * @see DLMF 5.11.1; arguments below 16 are shifted up by the recurrence of Gamma
 */
export function stirlingRemainder(x: number): number {
  if (x >= 16) return asymptotic(x);
  const twice = 2 * x;
  return Number.isInteger(twice) ? ofHalves[twice]! : shifted(x);
}

function asymptotic(x: number): number {
  const inverse = 1 / x;
  const square = inverse * inverse;
  let sum = 0;
  for (let i = series.length - 1; i >= 0; i--) sum = sum * square + series[i]!;
  return sum * inverse;
}

function shifted(x: number): number {
  let difference = 0;
  let at = x;
  for (; at < 16; at++) {
    const log = at < 1 ? Math.log1p(at) - Math.log(at) : Math.log1p(1 / at);
    difference += (at + 0.5) * log - 1;
  }
  return difference + asymptotic(at);
}
