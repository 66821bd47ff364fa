import { normalCdf } from "./normal.js";
import { LOG_SQRT_TWO_PI, stirlingRemainder } from "./stirling.js";
import type { Tails } from "./tails.js";

/**
 * Both tails of the noncentral t: the normal tail averaged over s = chi / sqrt(df), by the trapezoidal rule in u = ln s,
 * which converges at an exponential rate there and has no cancellation in either tail. Unguarded kernel.
 */
export function noncentralTTails(
  t: number,
  { df, noncentrality }: { readonly df: number; readonly noncentrality: number },
): Tails {
  const lower = noncentralTTail(1, t, df, noncentrality);
  const upper = noncentralTTail(-1, t, df, noncentrality);
  return lower < upper ? { lower, upper: 1 - lower } : { lower: 1 - upper, upper };
}

/** The lower tail for sign 1, the upper for -1. Unguarded kernel. */
export function noncentralTTail(sign: 1 | -1, t: number, df: number, noncentrality: number): number {
  const half = df / 2;
  const logIntegrand = (u: number): number =>
    logNormalCdf(sign * (t * Math.exp(u) - noncentrality)) - half * (Math.expm1(2 * u) - 2 * u);
  const peak = highest(logIntegrand, 8 / Math.sqrt(df) + 1.5);
  const top = logIntegrand(peak);
  const probe = 1e-3 / Math.sqrt(df);
  const bend = (2 * top - logIntegrand(peak + probe) - logIntegrand(peak - probe)) / probe ** 2;
  const step = Math.min(0.25 / Math.sqrt(Math.max(bend, half)), 0.7 / Math.max(1, Math.abs(noncentrality)));
  const sum = 1 + side(logIntegrand, peak, step, top) + side(logIntegrand, peak, -step, top);
  // ln of 2 (df/2)^(df/2) e^(-df/2) / Gamma(df/2), by Stirling's formula
  const logConstant = Math.LN2 + 0.5 * Math.log(half) - LOG_SQRT_TWO_PI - stirlingRemainder(half);
  return Math.exp(top + logConstant) * sum * step;
}

function side(logIntegrand: (u: number) => number, peak: number, step: number, top: number): number {
  let sum = 0;
  for (let i = 1; i < 20_000; i++) {
    const value = Math.exp(logIntegrand(peak + i * step) - top);
    sum += value;
    if (value < 1e-18) break;
  }
  return sum;
}

/** The peak by a coarse scan, then by golden section. */
function highest(f: (u: number) => number, width: number): number {
  const spacing = width / 32;
  let best = -1.5 * width;
  let value = -Infinity;
  for (let i = 0; i <= 80; i++) {
    const at = f(i * spacing - 1.5 * width);
    if (at > value) [best, value] = [i * spacing - 1.5 * width, at];
  }
  return goldenSection(f, best - spacing, best + spacing);
}

function goldenSection(f: (u: number) => number, from: number, to: number): number {
  const part = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - part * (high - low), low + part * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  for (let i = 0; i < 16; i++) {
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - part * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + part * (high - low);
      atRight = f(right);
    }
  }
  return (low + high) / 2;
}

/** ln P(Z <= z), by the asymptotic series (DLMF 7.12.1) where the probability itself would lose digits. */
function logNormalCdf(z: number): number {
  if (z > -30) return Math.log(normalCdf(z));
  const square = z * z;
  const rest = -1 / square + 3 / square ** 2 - 15 / square ** 3;
  return -square / 2 - Math.log(-z) - LOG_SQRT_TWO_PI + Math.log1p(rest);
}
