import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import { requireTwoGroups, type TwoGroups } from "../two-groups/groups.js";
import type { Interval } from "../types.js";

/** Intervals for a difference of proportions that print often and have no function of their own. */
export interface DifferenceIntervals extends TwoGroups {
  readonly method: "differenceIntervals";
  readonly level: number;
  readonly estimate: number;
  /** Unpooled standard error; breaks down with empty cells. */
  readonly wald: Interval;
  /** Wald with Yates's continuity correction, at most the difference itself (as in R's prop.test), cut at -1 and 1. */
  readonly waldContinuity: Interval;
}

/**
 * Large-sample intervals for the difference of two independent proportions, first minus second.
 * @param groups successes of trials in each group
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:873-890, methods 1 and 2
 * @example differenceIntervals({ first: { successes: 34, trials: 38 }, second: { successes: 9, trials: 15 } }).wald // => { low: 0.0283079, high: 0.5611658 }
 */
export function differenceIntervals(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): DifferenceIntervals {
  requireTwoGroups("differenceIntervals", { first, second });
  requireOptions("differenceIntervals", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("differenceIntervals", level);
  const z = normalUpperQuantile((1 - level) / 2);
  const [p, q] = [first.successes / first.trials, second.successes / second.trials];
  const half = z * Math.sqrt(variance(p, first.trials) + variance(q, second.trials));
  const estimate = p - q;
  const correction = Math.min(Math.abs(estimate), (1 / first.trials + 1 / second.trials) / 2);
  return {
    method: "differenceIntervals",
    first,
    second,
    level,
    estimate,
    wald: { low: estimate - half, high: estimate + half },
    waldContinuity: {
      low: Math.max(-1, estimate - half - correction),
      high: Math.min(1, estimate + half + correction),
    },
  };
}

const variance = (p: number, n: number): number => (p * (1 - p)) / n;
