import type { Tails } from "./tails.js";

/** Both tails at u, and the derivative of the lower one with respect to u. */
export interface TailsAndSlope extends Tails {
  readonly slope: number;
}

/**
 * Solves lower(u) = probability, or upper(u) = probability, by Newton on the logarithm of that tail, with a bisection
 * whenever a step leaves the bracket: converges to the last digits in either far tail. Unguarded kernel.
 */
export function quantileRoot(
  evaluate: (u: number) => TailsAndSlope,
  target: { readonly tail: keyof Tails; readonly probability: number },
  within: { readonly start: number; readonly low: number; readonly high: number },
): number {
  let { start: u, low, high } = within;
  const sign = target.tail === "lower" ? 1 : -1;
  const goal = Math.log(target.probability);
  for (let i = 0; i < 200; i++) {
    const at = evaluate(u);
    const tail = at[target.tail];
    const gap = Math.log(tail) - goal;
    if (gap === 0) return u;
    if (sign * gap > 0) high = u;
    else low = u;
    const step = (-sign * gap * tail) / at.slope;
    const next = u + step;
    if (Math.abs(step) <= 4e-16 * Math.abs(u)) return next;
    u = next > low && next < high ? next : low + (high - low) / 2;
    if (high - low <= 4e-16 * Math.abs(u)) return u;
  }
  return u;
}
