import { requireNumber, requirePositive, requireProbability } from "./guards.js";
import { incompleteBeta } from "./incomplete-beta.js";
import { logitQuantile } from "./logit-quantile.js";

/**
 * P(T <= t) of Student's t.
 *
 * @param t any number
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22 (through the incomplete beta function)
 * @example studentTCdf(2, 10) // => 0.963305982615
 */
export function studentTCdf(t: number, df: number): number {
  check("studentTCdf", t, df);
  return t <= 0 ? tailBeyond(t, df) : 1 - tailBeyond(t, df);
}

/**
 * P(T > t) of Student's t, to full precision when small.
 *
 * @param t any number
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @see DLMF 8.17.22 (through the incomplete beta function)
 * @example studentTUpper(2, 10) // => 0.0366940173854
 */
export function studentTUpper(t: number, df: number): number {
  check("studentTUpper", t, df);
  return t >= 0 ? tailBeyond(t, df) : 1 - tailBeyond(t, df);
}

/**
 * The t that Student's t stays at or below with probability p.
 *
 * @param p in [0, 1]
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @example studentTQuantile(0.975, 10) // => 2.22813885199
 */
export function studentTQuantile(p: number, df: number): number {
  requireProbability("studentTQuantile", "p", p);
  requirePositive("studentTQuantile", "df", df);
  return p <= 0.5 ? 0 - pointBeyond(p, df) : pointBeyond(1 - p, df);
}

/**
 * The t that Student's t exceeds with probability q, to full precision for small q.
 *
 * @param q in [0, 1]
 * @param df degrees of freedom, positive
 * @throws RangeError when an argument is out of range
 * @example studentTUpperQuantile(0.025, 10) // => 2.22813885199
 */
export function studentTUpperQuantile(q: number, df: number): number {
  requireProbability("studentTUpperQuantile", "q", q);
  requirePositive("studentTUpperQuantile", "df", df);
  return q <= 0.5 ? pointBeyond(q, df) : 0 - pointBeyond(1 - q, df);
}

/** P(T > |t|). */
function tailBeyond(t: number, df: number): number {
  const square = t * t;
  if (square === Infinity) return 0;
  return incompleteBeta(df / (df + square), square / (df + square), df / 2, 0.5).lower / 2;
}

/** The t >= 0 with P(T > t) = tail, tail at most one half. */
function pointBeyond(tail: number, df: number): number {
  if (tail === 0) return Infinity;
  if (tail === 0.5) return 0;
  return Math.sqrt(df) * Math.exp(-logitQuantile(2 * tail, 2 * (0.5 - tail), df / 2, 0.5) / 2);
}

function check(caller: string, t: number, df: number): void {
  requireNumber(caller, "t", t);
  requirePositive(caller, "df", df);
}
