import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import { binomialTails } from "../../numeric/binomial.js";
import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Blaker's exact interval for one proportion: the least interval holding every value whose acceptability exceeds
 * 1 - level, where acceptability is the smaller tail at the observed count plus the largest opposite tail that is no
 * larger. It lies inside the Clopper-Pearson interval.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Blaker 2000, Can J Stat 28:783-798
 * @example blaker(2, 10).interval // => { low: 0.0367714379, high: 0.5555529139 }
 */
export function blaker(successes: number, trials: number, options: LevelOption = {}): ProportionInterval<"blaker"> {
  const level = levelFor("blaker", successes, trials, options);
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
    const end = joins(inner) > 0 ? root(joins, start, inner) : inner;
    const above = (p: number): number => observed(p) + opposite(counts, p) - alpha;
    if (end === inner || above(end) >= 0) return root(above, start, end);
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

/** The root between two points in either order; an end whose sign is lost to rounding is the root. */
function root(f: (p: number) => number, from: number, to: number): number {
  const [atFrom, atTo] = [f(from), f(to)];
  if (from === to || atFrom >= 0) return from;
  if (atTo <= 0) return to;
  return bracketedRoot(f, from < to ? { low: from, high: to } : { low: to, high: from });
}
