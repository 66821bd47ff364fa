import { exactOneSided } from "../../stats/one-proportion/exact-one-sided.js";
import { nextCases } from "../../stats/one-proportion/next-cases.js";
import { proportionIntervals } from "../../stats/one-proportion/proportion-intervals.js";
import type { Count } from "../../stats/types.js";

/** What `denominator proportion` prints. */
export function analyseProportion(
  { successes, trials }: Count,
  options: { readonly level: number; readonly next?: number },
) {
  const { level, next } = options;
  const { lower, upper } = exactOneSided(successes, trials, { level });
  return {
    successes,
    trials,
    estimate: successes / trials,
    level,
    intervals: proportionIntervals(successes, trials, { level }),
    oneSided: { lower, upper },
    ...(next !== undefined && { next: predicted({ successes, trials }, next, level) }),
  };
}

export type ProportionAnalysis = ReturnType<typeof analyseProportion>;

function predicted({ successes, trials }: Count, next: number, level: number) {
  const { method, prior, estimate, interval, coverage, probabilities } = nextCases(successes, trials, { next, level });
  return { method, prior, cases: next, estimate, interval, coverage, probabilities };
}
