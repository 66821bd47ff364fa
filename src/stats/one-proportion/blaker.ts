import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import { binomialTails } from "../../numeric/binomial.js";
import { limitBetween } from "./limit-between.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

const mostTrials = 1e12;

/**
 * Blaker's exact interval for one proportion: the least interval holding every value whose acceptability exceeds
 * 1 - level, where acceptability is the smaller tail at the observed count plus the largest opposite tail that is no
 * larger. It lies inside the Clopper-Pearson interval.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer from 1 to 10^12: beyond that neighbouring counts are lost in rounding
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Blaker 2000, Can J Stat 28:783-798
 * @example blaker(2, 10).interval // => { low: 0.0367714379, high: 0.5555529139 }
 */
export function blaker(successes: number, trials: number, options: LevelOption = {}): ProportionInterval<"blaker"> {
  const level = levelFor("blaker", successes, trials, options);
  if (trials > mostTrials) throw new RangeError(`blaker: trials must be at most ${mostTrials}, got ${trials}`);
  const alpha = 1 - level;
  const failures = trials - successes;
  const interval = { low: 0, high: 1 };
  if (successes > 0)
    interval.low = limit({
      alpha,
      observed: (p) => binomialTails(successes - 1, trials, p).upper,
      opposite: (steps, p) => binomialTails(steps - 1, trials, p).lower,
      outer: betaQuantile(alpha / 2, { a: successes, b: failures + 1 }),
      inner: betaQuantile(alpha, { a: successes, b: failures + 1 }),
    });
  if (failures > 0)
    interval.high = limit({
      alpha,
      observed: (p) => binomialTails(successes, trials, p).lower,
      opposite: (steps, p) => binomialTails(trials - steps, trials, p).upper,
      outer: betaUpperQuantile(alpha / 2, { a: successes + 1, b: failures }),
      inner: betaUpperQuantile(alpha, { a: successes + 1, b: failures }),
    });
  return { method: "blaker", successes, trials, level, estimate: successes / trials, interval };
}

interface Side {
  readonly alpha: number;
  /** The tail beyond and with the observed count. */
  readonly observed: (p: number) => number;
  /** The opposite tail of so many counts. */
  readonly opposite: (counts: number, p: number) => number;
  /** Where the observed tail is alpha / 2: nothing beyond it is acceptable. */
  readonly outer: number;
  /** Where the observed tail is alpha: all from here to the estimate is acceptable. */
  readonly inner: number;
}

/**
 * Walks from outside in over the stretches on which the opposite tail holds the same counts. On one stretch the
 * acceptability falls, then rises; from one to the next it jumps up. So the first value that is acceptable is the start
 * of a stretch, or the only crossing within one.
 */
function limit({ alpha, observed, opposite, outer, inner }: Side): number {
  let counts = mostCounts((n) => opposite(n, outer) <= observed(outer));
  for (let start = outer; ; counts++) {
    if (observed(start) + opposite(counts, start) > alpha) return start;
    const joins = (p: number): number => observed(p) - opposite(counts + 1, p);
    const end = joins(inner) > 0 ? limitBetween(joins, start, inner) : inner;
    const above = (p: number): number => observed(p) + opposite(counts, p) - alpha;
    if (end === inner || above(end) >= 0) return limitBetween(above, start, end);
    start = end;
  }
}

/** The largest number of counts that a falling condition still allows, by doubling, then halving. */
function mostCounts(allowed: (counts: number) => boolean): number {
  let [low, high] = [0, 1];
  while (allowed(high)) [low, high] = [high, 2 * high];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (allowed(middle)) low = middle;
    else high = middle;
  }
  return low;
}
