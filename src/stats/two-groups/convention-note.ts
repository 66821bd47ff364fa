import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { conditionalOddsRatio } from "./conditional-odds-ratio.js";
import { fisherExact } from "./fisher-exact.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";

/** Whether Fisher's default p and the exact limits of the conditional odds ratio say the same about no difference. */
export interface ConventionNote extends TwoGroups {
  readonly method: "conventionNote";
  readonly level: number;
  readonly pointProbability: number;
  readonly doubled: number;
  readonly oddsRatioInterval: Interval;
  /** Why they part, when one finds a difference at 1 - level and the other does not. */
  readonly because?: string;
}

/**
 * Says so when Fisher's two-sided p and the exact limits of the odds ratio disagree at the level because the one sums unlikely
 * tables of both tails and the other leaves half of 1 - level in each. The doubled p always goes with the limits.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Agresti 2002, Categorical Data Analysis, section 3.6.1; Fay 2010, Biostatistics 11:373-374
 * @example conventionNote({ first: { successes: 16, trials: 31 }, second: { successes: 8, trials: 32 } }).pointProbability // => 0.0394
 */
export function conventionNote(
  { first, second }: TwoGroups,
  options: { readonly level?: number } = {},
): ConventionNote {
  requireTwoGroups("conventionNote", { first, second });
  requireOptions("conventionNote", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("conventionNote", level);
  const { pointProbability, doubled } = fisherExact({ first, second });
  const { interval } = conditionalOddsRatio({ first, second }, { level });
  const result = {
    method: "conventionNote",
    first,
    second,
    level,
    pointProbability,
    doubled,
    oddsRatioInterval: interval,
  } as const;
  const byP = pointProbability < 1 - level;
  const byLimits = interval.low > 1 || interval.high < 1;
  if (byP === byLimits) return result;
  const because =
    "the p value sums the tables no likelier than the observed one in both tails, " +
    "the limits leave half of 1 - level in each tail; the doubled p value goes with the limits";
  return { ...result, because };
}
