import { requireOptions } from "../guards.js";
import { permutedSums, type PermutedTails } from "../measurements/permuted-sums.js";
import { requireSimulation } from "../measurements/require-simulation.js";
import type { NotEstimable } from "../types.js";
import { requireDurations, riskTimes, type Durations } from "./durations.js";

export interface LogRankExact extends PermutedTails {
  readonly method: "log-rank, permutation";
  readonly n: { readonly first: number; readonly second: number };
  readonly observed: number;
  /** Events expected in the first group; the test is on observed less expected. */
  readonly expected: number;
}

/**
 * Log-rank test of two groups by permutation: how often would sharing out the same durations at random leave the first
 * group so far from its expected number of events? Exact for small series, else Monte Carlo with its error. It takes
 * the cases of both groups to have been equally likely to be lost.
 *
 * @param groups.first times and events
 * @param groups.second times and events
 * @param options.seed of the Monte Carlo draws; default 1
 * @param options.draws of Monte Carlo; default 9999
 * @returns the test (`less`: fewer events than expected in the first group), or null with the reason
 * @throws RangeError when durations, seed or draws are not valid
 * @see Peto and Peto 1972, J R Stat Soc A 135:185-207 (permutation of log-rank scores)
 * @example logRankExact({ first: { times: [1, 2], events: [true, true] }, second: { times: [3, 4], events: [true, true] } }).p.greater // => 0.166666666667
 */
export function logRankExact(
  groups: { readonly first: Durations; readonly second: Durations },
  options: { readonly seed?: number; readonly draws?: number } = {},
): LogRankExact | NotEstimable {
  requireOptions("logRankExact", options, ["seed", "draws"]);
  const { seed = 1, draws = 9999 } = options;
  requireSimulation("logRankExact", { seed, draws });
  const { first, second } = groups;
  requireDurations("logRankExact", first, "first");
  requireDurations("logRankExact", second, "second");
  if (first.times.length === 0 || second.times.length === 0)
    return { estimate: null, because: `the ${first.times.length === 0 ? "first" : "second"} group is empty` };
  const times = [...first.times, ...second.times];
  const events = [...first.events, ...second.events];
  if (!events.some(Boolean)) return { estimate: null, because: "no event happened" };

  const hazard = cumulativeHazard({ times, events });
  const scores = times.map((time, index) => (events[index] ? 1 : 0) - hazard(time));
  if (scores.every((score) => Math.abs(score - scores[0]!) < 1e-12))
    return { estimate: null, because: "all durations are alike" };
  const size = first.times.length;
  const observed = first.events.filter(Boolean).length;
  return {
    method: "log-rank, permutation",
    n: { first: size, second: second.times.length },
    observed,
    expected: first.times.reduce((sum, time) => sum + hazard(time), 0),
    ...permutedSums(scores, { size, seed, draws }),
  };
}

/** Nelson and Aalen's estimate over both groups. */
function cumulativeHazard(durations: Durations): (time: number) => number {
  let sum = 0;
  const at = new Map<number, number>();
  for (const { time, atRisk, events } of riskTimes(durations)) at.set(time, (sum += events / atRisk));
  return (time) => at.get(time)!;
}
