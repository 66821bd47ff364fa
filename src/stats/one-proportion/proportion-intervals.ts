import { clopperPearson } from "../clopper-pearson.js";
import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { agrestiCoull } from "./agresti-coull.js";
import { blaker } from "./blaker.js";
import { jeffreys } from "./jeffreys.js";
import { likelihoodRatio } from "./likelihood-ratio.js";
import { midP } from "./mid-p.js";
import { levelFor, type LevelOption, type ProportionInterval } from "./proportion-interval.js";
import { waldContinuity } from "./wald-continuity.js";
import { wald } from "./wald.js";
import { wilsonContinuity } from "./wilson-continuity.js";

/** Every interval for one proportion, the default first. */
export const proportionMethods = [
  "wilson",
  "wilsonContinuity",
  "clopperPearson",
  "midP",
  "blaker",
  "jeffreys",
  "agrestiCoull",
  "likelihoodRatio",
  "wald",
  "waldContinuity",
] as const;
export type ProportionMethod = (typeof proportionMethods)[number];

type IntervalFunction = (
  successes: number,
  trials: number,
  options?: LevelOption,
) => ProportionInterval<ProportionMethod>;
const intervalBy: { readonly [Method in ProportionMethod]: IntervalFunction } = {
  wilson,
  wilsonContinuity,
  clopperPearson,
  midP,
  blaker,
  jeffreys,
  agrestiCoull,
  likelihoodRatio,
  wald,
  waldContinuity,
};

/**
 * One interval for one proportion, by the method named.
 *
 * @param count successes of trials
 * @param options.method one of `proportionMethods`; default "wilson"
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when the method is not known
 * @see Newcombe 1998, Stat Med 17:857-872; Brown, Cai and DasGupta 2001, Stat Sci 16:101-133 (comparisons of methods)
 * @example proportionInterval({ successes: 0, trials: 20 }, { method: "clopperPearson" }).interval // => { low: 0, high: 0.1684335 }
 */
export function proportionInterval(
  { successes, trials }: { readonly successes: number; readonly trials: number },
  { method = "wilson", ...options }: LevelOption & { readonly method?: ProportionMethod } = {},
): ProportionInterval<ProportionMethod> {
  if (!proportionMethods.includes(method))
    throw new TypeError(
      `proportionInterval: no method is named "${String(method)}" (known: ${proportionMethods.join(", ")})`,
    );
  return intervalBy[method](successes, trials, options);
}

/**
 * All intervals for one proportion, by method.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Newcombe 1998, Stat Med 17:857-872; Brown, Cai and DasGupta 2001, Stat Sci 16:101-133 (comparisons of methods)
 * @example proportionIntervals(0, 20).midP // => { low: 0, high: 0.1391083407 }
 */
export function proportionIntervals(
  successes: number,
  trials: number,
  options: LevelOption = {},
): Readonly<Record<ProportionMethod, Interval>> {
  const level = levelFor("proportionIntervals", successes, trials, options);
  const entries = proportionMethods.map((method) => [
    method,
    intervalBy[method](successes, trials, { level }).interval,
  ]);
  return Object.fromEntries(entries) as Record<ProportionMethod, Interval>;
}
