import { requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { requirePartCount } from "./strata.js";

interface Standardised {
  readonly method: "direct standardisation, Wilson limits combined by variance recovery";
  readonly groups: readonly Count[];
  /** Shares of the mix, adding up to 1. */
  readonly mix: readonly number[];
  readonly level: number;
}

export interface StandardisedProportionResult extends Standardised {
  readonly estimate: number;
  readonly interval: Interval;
}

export interface NoStandardisedProportion extends Standardised {
  readonly estimate: null;
  readonly interval: null;
  /** Places of the groups that the mix holds and that have no cases. */
  readonly missing: readonly number[];
  readonly because: string;
}

/**
 * The proportion of successes that a series would have had with another mix of grades: its own proportions, weighted by
 * the mix. The limits recover each proportion's variance from its Wilson limits, so that 0 of n and n of n count with
 * their uncertainty and the interval stays within 0 and 1; with one grade it is Wilson's.
 *
 * @param groups successes of trials for each grade; a grade without cases must not be in the mix
 * @param mix weight of each grade, at least 0, not all 0; cases or shares
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count, a weight or the level is out of range
 * @see Zou, Huang and Zhang 2009, Comput Stat Data Anal 53:1080-1085 (linear functions of proportions); Newcombe 1998,
 *   Stat Med 17:873-890, method 10, is the same for a difference
 * @example standardisedProportion([{ successes: 9, trials: 10 }, { successes: 4, trials: 8 }], [1, 1]).estimate // => 0.7
 */
export function standardisedProportion(
  groups: readonly Count[],
  mix: readonly number[],
  options: { readonly level?: number } = {},
): StandardisedProportionResult | NoStandardisedProportion {
  requireOptions("standardisedProportion", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("standardisedProportion", level);
  groups.forEach((group, i) => requirePartCount("standardisedProportion", group, `groups[${i}]`));
  const shares = sharesOf(groups, mix);

  const method = "direct standardisation, Wilson limits combined by variance recovery";
  const input = { method, groups, mix: shares, level } as const;
  const missing = [...groups.keys()].filter((i) => shares[i]! > 0 && groups[i]!.trials === 0);
  if (missing.length > 0)
    return {
      ...input,
      estimate: null,
      interval: null,
      missing,
      because: `${missing.length} of the groups in the mix ${missing.length === 1 ? "has" : "have"} no cases`,
    };

  let [estimate, below, above] = [0, 0, 0];
  groups.forEach(({ successes, trials }, i) => {
    const share = shares[i]!;
    if (share === 0) return;
    const { estimate: own, interval } = wilson(successes, trials, { level });
    estimate += share * own;
    below += (share * (own - interval.low)) ** 2;
    above += (share * (interval.high - own)) ** 2;
  });
  // Rounding must not carry the ends past 0 and 1.
  estimate = Math.min(1, estimate);
  const interval = { low: Math.max(0, estimate - Math.sqrt(below)), high: Math.min(1, estimate + Math.sqrt(above)) };
  return { ...input, estimate, interval };
}

function sharesOf(groups: readonly Count[], mix: readonly number[]): number[] {
  if (mix.length !== groups.length || mix.length === 0)
    throw new RangeError(
      `standardisedProportion: mix must hold one weight a group (${groups.length}), got ${mix.length}`,
    );
  mix.forEach((weight, i) => {
    if (!(Number.isFinite(weight) && weight >= 0))
      throw new RangeError(`standardisedProportion: mix[${i}] must be a number of at least 0, got ${weight}`);
  });
  const total = mix.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0 && Number.isFinite(total)))
    throw new RangeError(`standardisedProportion: mix must add up to more than 0, got ${total}`);
  return mix.map((weight) => weight / total);
}
