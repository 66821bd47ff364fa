import { betaBinomialCdf, betaBinomialPmf, betaBinomialUpper } from "../../numeric/beta-binomial.js";
import { requireCount, requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";

/** What is believed before the series: Beta(1/2, 1/2) or Beta(1, 1). */
export const priors = ["jeffreys", "uniform"] as const;
export type Prior = (typeof priors)[number];

export interface NextCasesResult extends Count {
  readonly method: "betaBinomial";
  readonly prior: Prior;
  /** How many further cases are looked at. */
  readonly next: number;
  readonly level: number;
  /** Expected successes among them. */
  readonly estimate: number;
  /** Successes among them that leave at most (1 - level) / 2 outside on either side. */
  readonly interval: Interval;
  /** Chance that the number of successes lies in the interval. */
  readonly coverage: number;
  /** Chance of 0, 1, ... `next` successes. */
  readonly probabilities: readonly number[];
}

export interface NextCasesOptions {
  /** Integer of at least 1. */
  readonly next: number;
  /** In (0, 1); default 0.95. */
  readonly level?: number;
  /** Default "jeffreys". */
  readonly prior?: Prior;
}

/**
 * What the next cases could bring if they are like those seen: the predictive (beta-binomial) distribution of successes.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.next number of further cases, integer of at least 1, at most 100,000
 * @throws RangeError when a count or the level is out of range; TypeError when the prior is not known
 * @see Skellam 1948, J R Stat Soc B 10:257-261 (distribution); Brown, Cai and DasGupta 2001, Stat Sci 16:101-133 (prior)
 * @example nextCases(6, 11, { next: 20 }).interval // => { low: 4, high: 17 }
 */
export function nextCases(successes: number, trials: number, options: NextCasesOptions): NextCasesResult {
  requireOptions("nextCases", options, ["next", "level", "prior"]);
  const { next, level = 0.95, prior = "jeffreys" } = options;
  requireLevel("nextCases", level);
  requireCount("nextCases", successes, trials);
  if (!(Number.isInteger(next) && next >= 1 && next <= 100_000))
    throw new RangeError(`nextCases: next must be an integer from 1 to 100000, got ${next}`);
  if (!priors.includes(prior))
    throw new TypeError(`nextCases: no prior is named "${String(prior)}" (known: ${priors.join(", ")})`);

  const weight = prior === "jeffreys" ? 0.5 : 1;
  const distribution = { trials: next, a: successes + weight, b: trials - successes + weight };
  const probabilities = Array.from({ length: next + 1 }, (_, k) => betaBinomialPmf(k, distribution));
  const low = cut(probabilities, (1 - level) / 2);
  const high = next - cut(probabilities.toReversed(), (1 - level) / 2);
  const coverage = 1 - betaBinomialCdf(low - 1, distribution) - betaBinomialUpper(high, distribution);
  const estimate = (next * distribution.a) / (distribution.a + distribution.b);
  const interval = { low, high };
  return {
    method: "betaBinomial",
    successes,
    trials,
    prior,
    next,
    level,
    estimate,
    interval,
    coverage,
    probabilities,
  };
}

/** How many of the first values may be left out so that their sum is at most the tail. */
function cut(probabilities: readonly number[], tail: number): number {
  let sum = 0;
  let count = 0;
  while (count < probabilities.length - 1 && sum + probabilities[count]! <= tail) sum += probabilities[count++]!;
  return count;
}
