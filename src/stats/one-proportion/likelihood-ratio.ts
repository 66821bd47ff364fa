import { normalUpperQuantile } from "../../numeric/normal.js";
import { deviance } from "../../numeric/deviance.js";
import { limitBetween } from "./limit-between.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Likelihood interval for one proportion: the values whose log likelihood lies at most z^2/2 below its maximum.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:857-872, method 7
 * @example likelihoodRatio(81, 263).interval // => { low: 0.2542389888, high: 0.3654533413 }
 */
export function likelihoodRatio(
  successes: number,
  trials: number,
  options: LevelOption = {},
): ProportionInterval<"likelihoodRatio"> {
  const level = levelFor("likelihoodRatio", successes, trials, options);
  const allowed = normalUpperQuantile((1 - level) / 2) ** 2 / 2;
  const failures = trials - successes;
  const estimate = successes / trials;
  // Half the deviance; both of its parts are 0 at the estimate and cancel nothing near it.
  const drop = (p: number): number => deviance(successes, trials * p) + deviance(failures, trials * (1 - p));
  const gap = (p: number): number => drop(p) - allowed;
  const interval = { low: 0, high: 1 };
  if (successes === 0) interval.high = -Math.expm1(-allowed / trials);
  else if (failures === 0) interval.low = Math.exp(-allowed / trials);
  else {
    // ln p cannot fall below this at the limit, whatever the failures add.
    const least = estimate * Math.exp(-allowed / successes) * (1 - estimate) ** (failures / successes);
    const rest = (failures / trials) * Math.exp(-allowed / failures) * estimate ** (successes / failures);
    interval.low = limitBetween(gap, estimate, least);
    interval.high = limitBetween(gap, estimate, 1 - rest);
  }
  return { method: "likelihoodRatio", successes, trials, level, estimate, interval };
}
