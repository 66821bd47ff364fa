/** Largest value of a polynomial on [0, 1], and where it is taken. */
export interface BernsteinMaximum {
  readonly value: number;
  readonly at: number;
}

interface Piece {
  readonly coefficients: Float64Array;
  readonly from: number;
  readonly to: number;
}

/** Differences and bounds closer than this, relative to the largest coefficient, are rounding. */
const noise = 1e-15;

/**
 * Maximum on [0, 1] of the polynomial with the given Bernstein coefficients, none negative, certified to a relative 1e-12.
 * Branch and bound: a piece lies below its largest coefficient; when its coefficients rise and then fall it has one maximum,
 * found on the slope; otherwise it is halved by de Casteljau's algorithm.
 * @see Farouki 2012, Comput Aided Geom Des 29:379-419 (convex hull, variation diminishing, subdivision)
 * @example bernsteinMaximum([0, 1, 0]) // => { value: 0.5, at: 0.5 }
 */
export function bernsteinMaximum(coefficients: ArrayLike<number>): BernsteinMaximum {
  const all = Float64Array.from(coefficients);
  let best = scan(all);
  const pieces: Piece[] = [{ coefficients: all, from: 0, to: 1 }];
  for (let piece = pieces.pop(); piece; piece = pieces.pop()) {
    const largest = largestOf(piece.coefficients);
    if (largest <= best.value * (1 + 1e-12)) continue;
    const shape = shapeOf(piece.coefficients, noise * largest);
    const narrow = piece.to - piece.from < 1e-12;
    if (shape === "hill") best = better(best, topOfHill(all, piece));
    else if (shape === "wavy" && !narrow) pieces.push(...halves(piece));
    for (const end of [piece.from, piece.to]) best = better(best, { at: end, value: valueAt(all, end).value });
  }
  return best;
}

/** A first bound from evenly spread points, in the angle so that they crowd where the polynomial bends most. */
function scan(all: Float64Array): BernsteinMaximum {
  let best: BernsteinMaximum = { at: 0, value: all[0]! };
  for (let i = 1; i <= 32; i++) {
    const at = Math.sin((i / 32) * (Math.PI / 2)) ** 2;
    best = better(best, { at, value: valueAt(all, at).value });
  }
  return best;
}

function better(best: BernsteinMaximum, other: BernsteinMaximum): BernsteinMaximum {
  return other.value > best.value ? other : best;
}

function largestOf(coefficients: Float64Array): number {
  let largest = 0;
  for (const coefficient of coefficients) if (coefficient > largest) largest = coefficient;
  return largest;
}

/** A hill has its one maximum inside, a slope or a valley has it at an end (Descartes' rule on the differences). */
function shapeOf(coefficients: Float64Array, rounding: number): "hill" | "ends" | "wavy" {
  let turns = 0;
  let first = 0;
  let last = 0;
  for (let i = 1; i < coefficients.length; i++) {
    const step = coefficients[i]! - coefficients[i - 1]!;
    if (Math.abs(step) <= rounding) continue;
    const sign = Math.sign(step);
    if (last !== 0 && sign !== last) turns++;
    if (first === 0) first = sign;
    last = sign;
  }
  if (turns > 1) return "wavy";
  return turns === 1 && first > 0 ? "hill" : "ends";
}

function topOfHill(all: Float64Array, { from, to }: Piece): BernsteinMaximum {
  let low = from;
  let high = to;
  for (let turn = 0; turn < 60 && high - low > 1e-15 * high; turn++) {
    const middle = (low + high) / 2;
    if (valueAt(all, middle).slope > 0) low = middle;
    else high = middle;
  }
  const at = (low + high) / 2;
  return { at, value: valueAt(all, at).value };
}

/** Value, and a number with the sign of the slope, by the weights of the binomial distribution walked from their mode. */
function valueAt(all: Float64Array, at: number): { readonly value: number; readonly slope: number } {
  const degree = all.length - 1;
  if (at <= 0) return { value: all[0]!, slope: all[Math.min(1, degree)]! - all[0]! };
  if (at >= 1) return { value: all[degree]!, slope: all[degree]! - all[Math.max(0, degree - 1)]! };
  const mode = Math.min(degree, Math.floor((degree + 1) * at));
  const odds = at / (1 - at);
  let total = 1;
  let sum = all[mode]!;
  let moment = sum * (mode - degree * at);
  for (let i = mode, weight = 1; i < degree && weight > 1e-20;) {
    weight *= (odds * (degree - i)) / (i + 1);
    i++;
    total += weight;
    sum += weight * all[i]!;
    moment += weight * all[i]! * (i - degree * at);
  }
  for (let i = mode, weight = 1; i > 0 && weight > 1e-20;) {
    weight *= i / ((degree - i + 1) * odds);
    i--;
    total += weight;
    sum += weight * all[i]!;
    moment += weight * all[i]! * (i - degree * at);
  }
  return { value: sum / total, slope: moment };
}

/** Both halves by de Casteljau's algorithm, the one with the larger bound last: it is tried first. */
function halves({ coefficients, from, to }: Piece): Piece[] {
  const degree = coefficients.length - 1;
  const right = Float64Array.from(coefficients);
  const left = new Float64Array(degree + 1);
  left[0] = right[0]!;
  for (let level = 1; level <= degree; level++) {
    for (let i = 0; i <= degree - level; i++) right[i] = 0.5 * (right[i]! + right[i + 1]!);
    left[level] = right[0]!;
  }
  const middle = (from + to) / 2;
  const lower = { coefficients: left, from, to: middle };
  const upper = { coefficients: right, from: middle, to };
  return largestOf(left) > largestOf(right) ? [upper, lower] : [lower, upper];
}
