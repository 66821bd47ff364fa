import { requireNumber, requireProbability } from "./guards.js";

const SQRT_HALF = Math.SQRT1_2;
const STEP = 0.5;

// Midpoints of the trapezoidal rule, squared, and their weights e^(-t^2).
const nodes = Array.from({ length: 13 }, (_, k) => ((k + 0.5) * STEP) ** 2);
const weights = nodes.map((square) => Math.exp(-square));

/**
 * P(Z <= z) for a standard normal Z.
 *
 * @param z any number
 * @throws RangeError when z is NaN
 * @see Hunter and Regan 1972, Math Comp 26:539-541 (trapezoidal rule with its pole correction)
 * @example normalCdf(1.959963984540054) // => 0.975
 */
export function normalCdf(z: number): number {
  requireNumber("normalCdf", "z", z);
  return z <= 0 ? tailBeyond(-z) : 1 - tailBeyond(z);
}

/**
 * P(Z > z) for a standard normal Z, to full precision far out.
 *
 * @param z any number
 * @throws RangeError when z is NaN
 * @see Hunter and Regan 1972, Math Comp 26:539-541
 * @example normalUpper(8) // => 6.22096057427e-16
 */
export function normalUpper(z: number): number {
  requireNumber("normalUpper", "z", z);
  return z >= 0 ? tailBeyond(z) : 1 - tailBeyond(-z);
}

/** Density of the standard normal at z. */
export function normalDensity(z: number): number {
  requireNumber("normalDensity", "z", z);
  return expMinusHalfSquare(Math.abs(z)) / Math.sqrt(2 * Math.PI);
}

/**
 * The z below which a standard normal falls with probability p. -Infinity at 0, Infinity at 1.
 *
 * @param p in [0, 1]
 * @throws RangeError when p is out of range
 * @see Wichura 1988, Appl Stat 37:477-484, algorithm AS 241 (PPND16)
 * @example normalQuantile(0.975) // => 1.959963984540054
 */
export function normalQuantile(p: number): number {
  requireProbability("normalQuantile", "p", p);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, centre);
  return q < 0 ? -quantileOfTail(p) : quantileOfTail(1 - p);
}

/**
 * The z above which a standard normal falls with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @throws RangeError when q is out of range
 * @see Wichura 1988, Appl Stat 37:477-484
 * @example normalUpperQuantile(0.025) // => 1.959963984540054
 */
export function normalUpperQuantile(q: number): number {
  requireProbability("normalUpperQuantile", "q", q);
  return 0 - normalQuantile(q);
}

/** P(Z > z) for z >= 0: half the complementary error function of z / sqrt 2. */
function tailBeyond(z: number): number {
  if (z > 39) return 0;
  const x = z * SQRT_HALF;
  const square = (z * z) / 2;
  let sum = 0;
  for (let k = nodes.length - 1; k >= 0; k--) sum += weights[k]! / (nodes[k]! + square);
  const pole = x < Math.PI / STEP ? 1 / (1 + Math.exp((2 * Math.PI * x) / STEP)) : 0;
  return ((STEP * x) / Math.PI) * expMinusHalfSquare(z) * sum + pole;
}

/** e^(-z^2/2), the square split into an exact part and a small rest so that large z keep their digits. */
function expMinusHalfSquare(z: number): number {
  if (z > 40) return 0;
  const exact = Math.trunc(z * 16) / 16;
  return Math.exp((-exact * exact) / 2) * Math.exp((-(z - exact) * (z + exact)) / 2);
}

function quantileOfTail(tail: number): number {
  if (tail === 0) return Infinity;
  const r = Math.sqrt(-Math.log(tail));
  return r <= 5 ? ratio(r - 1.6, middle) : ratio(r - 5, far);
}

interface RationalFunction {
  readonly numerator: readonly number[];
  readonly denominator: readonly number[];
}

function ratio(r: number, { numerator, denominator }: RationalFunction): number {
  return polynomial(r, numerator) / polynomial(r, denominator);
}

/** Highest power first. */
function polynomial(r: number, coefficients: readonly number[]): number {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * r + coefficient;
  return sum;
}

// The three rational functions of AS 241, as the nearest doubles.
const centre: RationalFunction = {
  numerator: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
    133.14166789178438, 3.3871328727963665,
  ],
  denominator: [
    5226.495278852546, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751, 687.1870074920579,
    42.31333070160091, 1,
  ],
};
const middle: RationalFunction = {
  numerator: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
    5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  denominator: [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
};
const far: RationalFunction = {
  numerator: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
    1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  denominator: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133, 0.014875361290850615,
    0.1369298809227358, 0.599832206555888, 1,
  ],
};
