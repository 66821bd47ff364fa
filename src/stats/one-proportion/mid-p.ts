import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import { binomialMass } from "../../numeric/binomial-mass.js";
import { binomialTails } from "../../numeric/binomial.js";
import { limitBetween } from "./limit-between.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Mid-P interval for one proportion: as the exact interval, but only half of the observed count's own probability
 * belongs to a tail.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Berry and Armitage 1995, Statistician 44:417-423; Newcombe 1998, Stat Med 17:857-872, method 6
 * @example midP(5, 20).interval // => { low: 0.0978600849, high: 0.4702237995 }
 */
export function midP(successes: number, trials: number, options: LevelOption = {}): ProportionInterval<"midP"> {
  const level = levelFor("midP", successes, trials, options);
  const tail = (1 - level) / 2;
  const interval = { low: lowerLimit(successes, trials, tail), high: upperLimit(successes, trials, tail) };
  return { method: "midP", successes, trials, level, estimate: successes / trials, interval };
}

function lowerLimit(successes: number, trials: number, tail: number): number {
  if (successes === 0) return 0;
  if (successes === trials) return (2 * tail) ** (1 / trials);
  const failures = trials - successes;
  const gap = (p: number): number => {
    const half = binomialMass(successes, trials, p, 1 - p) / 2;
    return Math.log((binomialTails(successes, trials, p).upper + half) / tail);
  };
  // Counting the whole of the observed probability, then none of it, brackets the half.
  const low = betaQuantile(tail, { a: successes, b: failures + 1 });
  const high = betaQuantile(tail, { a: successes + 1, b: failures });
  return limitBetween(gap, low, high);
}

function upperLimit(successes: number, trials: number, tail: number): number {
  if (successes === trials) return 1;
  if (successes === 0) return -Math.expm1(Math.log(2 * tail) / trials);
  const failures = trials - successes;
  const gap = (p: number): number => {
    const half = binomialMass(successes, trials, p, 1 - p) / 2;
    return Math.log((binomialTails(successes - 1, trials, p).lower + half) / tail);
  };
  const low = betaUpperQuantile(tail, { a: successes, b: failures + 1 });
  const high = betaUpperQuantile(tail, { a: successes + 1, b: failures });
  return limitBetween(gap, high, low);
}
