import { bracketedRoot } from "./bracketed-root.js";
import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { noncentralTTail, noncentralTTails } from "./noncentral-t-tails.js";

/** A noncentral t distribution. */
export interface NoncentralT {
  /** Degrees of freedom, positive. */
  readonly df: number;
  /** Noncentrality, any finite number. */
  readonly noncentrality: number;
}

/**
 * P(T <= t) of a noncentral t.
 *
 * @param t finite
 * @throws RangeError when an argument is out of range
 * @see Johnson, Kotz and Balakrishnan 1995, Continuous univariate distributions 2, chapter 31 (mixture over chi)
 * @example noncentralTCdf(2, { df: 10, noncentrality: 1 }) // => 0.8076115625
 */
export function noncentralTCdf(t: number, distribution: NoncentralT): number {
  check("noncentralTCdf", distribution);
  requireFinite("noncentralTCdf", "t", t);
  return noncentralTTails(t, distribution).lower;
}

/**
 * P(T > t) of a noncentral t, to full precision when small.
 *
 * @param t finite
 * @throws RangeError when an argument is out of range
 * @see Johnson, Kotz and Balakrishnan 1995, Continuous univariate distributions 2, chapter 31 (mixture over chi)
 * @example noncentralTUpper(2, { df: 10, noncentrality: 1 }) // => 0.1923884375
 */
export function noncentralTUpper(t: number, distribution: NoncentralT): number {
  check("noncentralTUpper", distribution);
  requireFinite("noncentralTUpper", "t", t);
  return noncentralTTails(t, distribution).upper;
}

/**
 * The t that a noncentral t stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @throws RangeError when an argument is out of range
 * @example noncentralTQuantile(0.5, { df: 10, noncentrality: 1 }) // => 1.02572092
 */
export function noncentralTQuantile(p: number, distribution: NoncentralT): number {
  check("noncentralTQuantile", distribution);
  requireProbability("noncentralTQuantile", "p", p);
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const { df, noncentrality } = distribution;
  const gap = (t: number): number =>
    p <= 0.5
      ? Math.log(noncentralTTail(1, t, df, noncentrality)) - Math.log(p)
      : Math.log(1 - p) - Math.log(noncentralTTail(-1, t, df, noncentrality));
  return bracketedRoot(gap, bracket(gap, noncentrality));
}

/** Steps outward from the start, each four times the one before, until the sign changes. */
function bracket(gap: (t: number) => number, start: number): { low: number; high: number } {
  const direction = gap(start) > 0 ? -1 : 1;
  let near = start;
  for (let step = 1; ; step *= 4) {
    const far = near + direction * step;
    if (direction * gap(far) >= 0) return direction > 0 ? { low: near, high: far } : { low: far, high: near };
    near = far;
  }
}

function check(caller: string, { df, noncentrality }: NoncentralT): void {
  requirePositive(caller, "df", df);
  requireFinite(caller, "noncentrality", noncentrality);
}

function requireFinite(caller: string, name: string, value: number): void {
  requireNumber(caller, name, value);
  if (!Number.isFinite(value)) throw new RangeError(`${caller}: ${name} must be finite, got ${value}`);
}
