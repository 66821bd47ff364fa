import { betaQuantile, betaUpperQuantile } from "../../numeric/beta.js";
import { requireCount, requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";
import type { BetaBelief } from "./beta-by-moments.js";

/** A belief in numbers: mean and central interval. */
export interface BeliefSummary extends BetaBelief {
  readonly mean: number;
  readonly interval: Interval;
}

export interface BetaUpdateResult {
  readonly method: "beta-binomial updating";
  readonly count: Count;
  readonly level: number;
  readonly before: BeliefSummary;
  readonly after: BeliefSummary;
}

/**
 * What is believed of a proportion after a count was seen: a beta belief (a, b) becomes (a + successes, b + failures).
 *
 * @param belief both shapes above 0
 * @param count successes of trials, at least one trial
 * @param options.level probability inside the central interval, in (0, 1); default 0.95
 * @throws RangeError when a shape, a count or the level is out of range
 * @see Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 2.4 (conjugate prior of the binomial)
 * @example betaUpdate({ a: 1, b: 1 }, { successes: 20, trials: 22 }).after.interval // => { low: 0.719620664091, high: 0.972248492577 }
 */
export function betaUpdate(
  belief: BetaBelief,
  count: Count,
  options: { readonly level?: number } = {},
): BetaUpdateResult {
  requireOptions("betaUpdate", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("betaUpdate", level);
  const { successes, trials } = count;
  requireCount("betaUpdate", successes, trials);
  for (const shape of ["a", "b"] as const)
    if (!(belief[shape] > 0 && Number.isFinite(belief[shape])))
      throw new RangeError(`betaUpdate: ${shape} must be a number above 0, got ${belief[shape]}`);
  const after = { a: belief.a + successes, b: belief.b + trials - successes };
  return {
    method: "beta-binomial updating",
    count,
    level,
    before: summary(belief, level),
    after: summary(after, level),
  };
}

function summary({ a, b }: BetaBelief, level: number): BeliefSummary {
  const tail = (1 - level) / 2;
  const interval = { low: betaQuantile(tail, { a, b }), high: betaUpperQuantile(tail, { a, b }) };
  return { a, b, mean: a / (a + b), interval };
}
