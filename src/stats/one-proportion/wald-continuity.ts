import { wald } from "./wald.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Wald interval with continuity correction, not cut to [0, 1]: here only so that a printed interval can be recognised.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:857-872, method 2
 * @example waldContinuity(81, 263).interval // => { low: 0.250288986, high: 0.365680596 }
 */
export function waldContinuity(
  successes: number,
  trials: number,
  options: LevelOption = {},
): ProportionInterval<"waldContinuity"> {
  const level = levelFor("waldContinuity", successes, trials, options);
  const { estimate, interval } = wald(successes, trials, { level });
  const correction = 1 / (2 * trials);
  const corrected = { low: interval.low - correction, high: interval.high + correction };
  return { method: "waldContinuity", successes, trials, level, estimate, interval: corrected };
}
