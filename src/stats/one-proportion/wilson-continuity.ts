import { normalUpperQuantile } from "../../numeric/normal.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Wilson score interval for one proportion, with continuity correction.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:857-872, method 4
 * @example wilsonContinuity(81, 263).interval // => { low: 0.253508682, high: 0.368176201 }
 */
export function wilsonContinuity(
  successes: number,
  trials: number,
  options: LevelOption = {},
): ProportionInterval<"wilsonContinuity"> {
  const level = levelFor("wilsonContinuity", successes, trials, options);
  const z = normalUpperQuantile((1 - level) / 2);
  const failures = trials - successes;
  const interval = {
    low: lowerLimit(successes, trials, z),
    high: failures === 0 ? 1 : Math.min(1, upperLimit(successes, trials, z)),
  };
  return { method: "wilsonContinuity", successes, trials, level, estimate: successes / trials, interval };
}

/** The printed formula multiplied out, which keeps its digits when the limit is small. */
function lowerLimit(successes: number, trials: number, z: number): number {
  if (successes === 0) return 0;
  const failures = trials - successes;
  const root = Math.sqrt(z ** 2 - 2 - 1 / trials + (4 * successes * (failures + 1)) / trials);
  const sum = 2 * successes + z ** 2 - 1 + z * root;
  return ((2 * successes - 1) / trials) * ((successes - 0.5) / sum);
}

function upperLimit(successes: number, trials: number, z: number): number {
  const failures = trials - successes;
  const root = Math.sqrt(z ** 2 + 2 - 1 / trials + (4 * successes * (failures - 1)) / trials);
  return (2 * successes + z ** 2 + 1 + z * root) / (2 * (trials + z ** 2));
}
