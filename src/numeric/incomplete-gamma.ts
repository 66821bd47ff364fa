import { poissonMass } from "./poisson-mass.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

const TINY = 1e-300;

/**
 * Regularised incomplete gamma function, both tails: P(a, x) and Q(a, x). Unguarded kernel.
 *
 * @see DLMF 8.11.4 (series, below the mean) and 8.9.2 (continued fraction, above it)
 */
export function incompleteGamma(a: number, x: number): Tails {
  if (x <= 0) return allAbove;
  if (x === Infinity) return allBelow;
  const mass = poissonMass(a, x); // x^a e^-x / Gamma(a + 1)
  if (x < a + 1) {
    const lower = Math.min(1, mass * series(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, mass * a * fraction(a, x));
  return { lower: 1 - upper, upper };
}

function series(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = a + 1; term > sum * 1e-17; n++) {
    term *= x / n;
    sum += term;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let value = d;
  for (let i = 1; i < 1_000_000; i++) {
    const numerator = -i * (i - a);
    b += 2;
    d = 1 / nonzero(numerator * d + b);
    c = nonzero(b + numerator / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) < 2e-16) return value;
  }
  return value;
}

function nonzero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
