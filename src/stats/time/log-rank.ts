import { chiSquareUpper } from "../../numeric/chi-square.js";
import type { NotEstimable } from "../types.js";
import { requireDurations, riskTimes, type Durations } from "./durations.js";
import { solvePositive } from "./solve-positive.js";

export interface LogRank {
  readonly method: "log-rank, chi-square approximation";
  /** One a group, in the order given. */
  readonly groups: readonly { readonly n: number; readonly observed: number; readonly expected: number }[];
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
}

/**
 * Log-rank test that the event comes equally fast in all groups.
 *
 * @param groups two or more, each with times and events
 * @returns the test, or null with the reason when it has no variance: no event, an empty group, one at risk each time
 * @throws RangeError when there are fewer than two groups or the durations are not valid
 * @see Mantel 1966, Cancer Chemother Rep 50:163-170; Peto and Peto 1972, J R Stat Soc A 135:185-207
 * @example logRank([{ times: [1, 2], events: [true, true] }, { times: [3, 4], events: [true, true] }]).statistic // => 2.88235294117647
 */
export function logRank(groups: readonly Durations[]): LogRank | NotEstimable {
  if (groups.length < 2) throw new RangeError(`logRank: groups must be at least 2, got ${groups.length}`);
  groups.forEach((group, index) => requireDurations("logRank", group, `groups[${index}]`));
  const empty = groups.findIndex((group) => group.times.length === 0);
  if (empty >= 0) return { estimate: null, because: `group ${empty + 1} is empty` };
  const observed = groups.map((group) => group.events.filter(Boolean).length);
  if (observed.every((count) => count === 0)) return { estimate: null, because: "no event happened" };

  const { expected, covariance } = expectedAndCovariance(groups);
  const free = groups.length - 1;
  const excess = observed.slice(0, free).map((count, index) => count - expected[index]!);
  const solved = solvePositive(covariance, excess);
  if (solved === null) return { estimate: null, because: "no event came while every group was at risk" };
  const statistic = Math.max(
    0,
    excess.reduce((sum, value, index) => sum + value * solved[index]!, 0),
  );
  return {
    method: "log-rank, chi-square approximation",
    groups: groups.map((group, index) => ({
      n: group.times.length,
      observed: observed[index]!,
      expected: expected[index]!,
    })),
    statistic,
    df: free,
    p: chiSquareUpper(statistic, free),
  };
}

/** Sums of the multivariate hypergeometric means and covariances over the event times, the last group left out. */
function expectedAndCovariance(groups: readonly Durations[]): {
  readonly expected: readonly number[];
  readonly covariance: readonly number[][];
} {
  const free = groups.length - 1;
  const expected = groups.map(() => 0);
  const covariance = Array.from({ length: free }, () => new Array<number>(free).fill(0));
  const all = riskTimes({
    times: groups.flatMap((group) => group.times),
    events: groups.flatMap((group) => group.events),
  });
  const sorted = groups.map((group) => Float64Array.from(group.times).sort());
  const past = groups.map(() => 0);
  for (const { time, atRisk, events } of all) {
    sorted.forEach((times, index) => {
      while (past[index]! < times.length && times[past[index]!]! < time) past[index]!++;
    });
    if (events === 0) continue;
    const shares = sorted.map((times, index) => (times.length - past[index]!) / atRisk);
    shares.forEach((share, index) => (expected[index] = expected[index]! + events * share));
    if (atRisk === 1) continue;
    const spread = (events * (atRisk - events)) / (atRisk - 1);
    for (let i = 0; i < free; i++)
      for (let j = 0; j < free; j++)
        covariance[i]![j]! += spread * ((i === j ? shares[i]! : 0) - shares[i]! * shares[j]!);
  }
  return { expected, covariance };
}
