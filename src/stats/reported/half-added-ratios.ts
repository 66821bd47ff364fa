import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireTwoGroups, type TwoGroups } from "../two-groups/groups.js";
import type { Interval } from "../types.js";

/** Odds and risk ratio after one half is added to every cell. */
export interface HalfAddedRatios extends TwoGroups {
  readonly method: "halfAddedRatios";
  readonly level: number;
  readonly oddsRatio: { readonly estimate: number; readonly interval: Interval };
  readonly riskRatio: { readonly estimate: number; readonly interval: Interval };
}

/**
 * Ratios with limits on the logarithmic scale, 0.5 added to each of the four cells (defined for empty cells, too).
 * @param groups successes of trials in each group
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Haldane 1956, Ann Hum Genet 20:309-311; Agresti 2013, Categorical Data Analysis, 3rd ed., section 3.1.1 (from memory)
 * @example halfAddedRatios({ first: { successes: 9, trials: 9 }, second: { successes: 6, trials: 11 } }).oddsRatio.estimate // => 16.0769
 */
export function halfAddedRatios(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): HalfAddedRatios {
  requireTwoGroups("halfAddedRatios", { first, second });
  requireOptions("halfAddedRatios", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("halfAddedRatios", level);
  const z = normalUpperQuantile((1 - level) / 2);
  const [a, c] = [first.successes + 0.5, second.successes + 0.5];
  const [b, d] = [first.trials - first.successes + 0.5, second.trials - second.successes + 0.5];
  return {
    method: "halfAddedRatios",
    first,
    second,
    level,
    oddsRatio: around(Math.log(a / b) - Math.log(c / d), z * Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d)),
    riskRatio: around(
      Math.log(a / (a + b)) - Math.log(c / (c + d)),
      z * Math.sqrt(1 / a - 1 / (a + b) + 1 / c - 1 / (c + d)),
    ),
  };
}

const around = (log: number, half: number): { estimate: number; interval: Interval } => ({
  estimate: Math.exp(log),
  interval: { low: Math.exp(log - half), high: Math.exp(log + half) },
});
