/**
 * A root of f between two points where it has opposite signs, to the last digits: inverse quadratic interpolation with
 * a bisection whenever that is not sure to help.
 *
 * @param f continuous; f(low) and f(high) of opposite sign, or either 0
 * @param within.low, within.high finite, low below high
 * @throws RangeError when the bracket is not one, or f gives NaN
 * @see Chandrupatla 1997, Adv Eng Softw 28:145-149
 * @example bracketedRoot((x) => x * x - 2, { low: 0, high: 2 }) // => 1.4142135623730951
 */
export function bracketedRoot(
  f: (x: number) => number,
  within: { readonly low: number; readonly high: number },
): number {
  // a is the newest point, b has the opposite sign, c is the point that a or b displaced.
  let [a, b] = [within.low, within.high];
  let [fa, fb] = [f(a), f(b)];
  if (!(a < b && Math.abs(a) < Infinity && Math.abs(b) < Infinity))
    throw new RangeError(`bracketedRoot: low must be below high, both finite, got ${a} and ${b}`);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 ? fb > 0 : fb < 0))
    throw new RangeError(`bracketedRoot: f must have opposite signs at low and high, got ${fa} and ${fb}`);
  let next = middle(a, b);
  for (let i = 0; i < 500; i++) {
    const fx = f(next);
    if (Number.isNaN(fx)) throw new RangeError(`bracketedRoot: f must give a number, got NaN at ${next}`);
    if (fx === 0) return next;
    const same = fx < 0 === fa < 0;
    const [c, fc] = same ? [a, fa] : [b, fb];
    if (!same) [b, fb] = [a, fa];
    [a, fa] = [next, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const tolerance = 2.3e-16 * Math.abs(best) + Number.MIN_VALUE;
    if (Math.abs(b - a) <= 2 * tolerance) return best;
    next = interpolated({ a, fa, b, fb, c, fc }, tolerance) ?? middle(a, b);
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

interface Points {
  readonly a: number;
  readonly fa: number;
  readonly b: number;
  readonly fb: number;
  readonly c: number;
  readonly fc: number;
}

/** Inverse quadratic interpolation where Chandrupatla's test says that it is monotone in the bracket. */
function interpolated({ a, fa, b, fb, c, fc }: Points, tolerance: number): number | undefined {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  if (!(phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi)) return undefined;
  const t = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
  const least = tolerance / Math.abs(b - a);
  return a + Math.min(1 - least, Math.max(least, t)) * (b - a);
}

/** The midpoint, geometric where the ends differ by orders of magnitude, so that tiny roots are reached as well. */
function middle(a: number, b: number): number {
  const [small, large] = Math.abs(a) < Math.abs(b) ? [a, b] : [b, a];
  if (small === 0) return large * 1e-2;
  if (small * large < 0 || large / small < 1e3) return a + (b - a) / 2;
  return Math.sign(large) * Math.sqrt(Math.abs(small)) * Math.sqrt(Math.abs(large));
}
