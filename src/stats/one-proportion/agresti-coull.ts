import { normalUpperQuantile } from "../../numeric/normal.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";

/**
 * Agresti-Coull interval for one proportion: a Wald interval after adding z^2/2 successes and as many failures. Not cut
 * to [0, 1]; the estimate stays the observed proportion.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Agresti and Coull 1998, Am Stat 52:119-126; form as in Brown, Cai and DasGupta 2001, Stat Sci 16:101-133, (5)
 * @example agrestiCoull(0, 20).interval // => { low: -0.0286844025, high: 0.1898095605 }
 */
export function agrestiCoull(
  successes: number,
  trials: number,
  options: LevelOption = {},
): ProportionInterval<"agrestiCoull"> {
  const level = levelFor("agrestiCoull", successes, trials, options);
  const z = normalUpperQuantile((1 - level) / 2);
  const n = trials + z ** 2;
  const centre = (successes + z ** 2 / 2) / n;
  const half = z * Math.sqrt((centre * ((trials - successes + z ** 2 / 2) / n)) / n);
  const interval = { low: centre - half, high: centre + half };
  return { method: "agrestiCoull", successes, trials, level, estimate: successes / trials, interval };
}
