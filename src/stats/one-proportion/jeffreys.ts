import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Jeffreys interval for one proportion: equal-tailed limits of Beta(successes + 1/2, failures + 1/2), the low one 0
 * without successes and the high one 1 without failures (the form of Brown, Cai and DasGupta, not their further
 * modification next to the ends).
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Brown, Cai and DasGupta 2001, Stat Sci 16:101-133, section 3.1.2
 * @example jeffreys(3, 10).interval // => { low: 0.0926945939, high: 0.605818318 }
 */
export function jeffreys(successes: number, trials: number, options: LevelOption = {}): ProportionInterval<"jeffreys"> {
  const level = levelFor("jeffreys", successes, trials, options);
  const tail = (1 - level) / 2;
  const failures = trials - successes;
  const shape = { a: successes + 0.5, b: failures + 0.5 };
  const interval = {
    low: successes === 0 ? 0 : betaQuantile(tail, shape),
    high: failures === 0 ? 1 : betaUpperQuantile(tail, shape),
  };
  return { method: "jeffreys", successes, trials, level, estimate: successes / trials, interval };
}
