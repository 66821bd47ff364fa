import { normalUpperQuantile } from "../../numeric/normal.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Wald interval for one proportion, not cut to [0, 1]: here only so that a printed interval can be recognised. Its
 * coverage falls far below the level near 0 and 1 (Brown, Cai and DasGupta 2001).
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:857-872, method 1
 * @example wald(9, 10).interval // => { low: 0.714061490, high: 1.08593851 }
 */
export function wald(successes: number, trials: number, options: LevelOption = {}): ProportionInterval<"wald"> {
  const level = levelFor("wald", successes, trials, options);
  const estimate = successes / trials;
  const half = normalUpperQuantile((1 - level) / 2) * Math.sqrt((estimate * ((trials - successes) / trials)) / trials);
  const interval = { low: estimate - half, high: estimate + half };
  return { method: "wald", successes, trials, level, estimate, interval };
}
