import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { requireDurations, riskTimes, type Durations, type RiskTime } from "./durations.js";

export interface SurvivalStep extends RiskTime {
  /** Share without the event after this time. */
  readonly survival: number;
  /** Greenwood; null once nobody is left without the event. */
  readonly standardError: number | null;
  /** Log-log limits; null before the first event and once the share is 0, where they are not defined. */
  readonly interval: Interval | null;
}

export interface KaplanMeier {
  readonly method: "Kaplan-Meier, Greenwood standard error, log-log limits";
  readonly n: number;
  readonly events: number;
  readonly level: number;
  /** One a distinct time, in order. */
  readonly steps: readonly SurvivalStep[];
  /** First time at which the share is one half or less, and the times at which its limits are. */
  readonly median: { readonly estimate: number; readonly interval: Interval } | NotEstimable;
}

/**
 * Share of cases without the event over time.
 *
 * @param durations.times zero or more, in one unit
 * @param durations.events true where the event happened, false where the case was last seen without it
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the curve, or null with the reason when there is no case; the median is null with the reason when the curve
 *   does not fall to one half
 * @throws RangeError when lengths differ, a time is negative or not finite, or the level is out of range
 * @see Kaplan and Meier 1958, J Am Stat Assoc 53:457-481; Greenwood 1926; limits of Kalbfleisch and Prentice 1980,
 *   section 1.3; median limits of Brookmeyer and Crowley 1982, Biometrics 38:29-41
 * @example kaplanMeier({ times: [1, 2, 3, 4], events: [true, false, true, false] }).steps[2].survival // => 0.375
 */
export function kaplanMeier(
  durations: Durations,
  options: { readonly level?: number } = {},
): KaplanMeier | NotEstimable {
  requireOptions("kaplanMeier", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("kaplanMeier", level);
  requireDurations("kaplanMeier", durations);
  if (durations.times.length === 0) return { estimate: null, because: "there is no case" };
  const steps = survivalSteps(riskTimes(durations), normalUpperQuantile((1 - level) / 2));
  return {
    method: "Kaplan-Meier, Greenwood standard error, log-log limits",
    n: durations.times.length,
    events: steps.reduce((sum, step) => sum + step.events, 0),
    level,
    steps,
    median: medianOf(steps),
  };
}

function survivalSteps(times: readonly RiskTime[], z: number): readonly SurvivalStep[] {
  let survival = 1;
  let greenwood = 0;
  return times.map((at) => {
    if (at.events > 0) {
      survival *= 1 - at.events / at.atRisk;
      greenwood += at.events / (at.atRisk * (at.atRisk - at.events));
    }
    if (at.events === at.atRisk) survival = 0;
    const standardError = survival === 0 ? null : survival * Math.sqrt(greenwood);
    return { ...at, survival, standardError, interval: logLogLimits(survival, greenwood, z) };
  });
}

function logLogLimits(survival: number, greenwood: number, z: number): Interval | null {
  if (survival === 0 || survival === 1) return null;
  const log = Math.log(survival);
  const shift = (z * Math.sqrt(greenwood)) / Math.abs(log);
  return { low: Math.exp(log * Math.exp(shift)), high: Math.exp(log * Math.exp(-shift)) };
}

function medianOf(steps: readonly SurvivalStep[]): KaplanMeier["median"] {
  // Products of fractions may miss one half by a rounding error.
  const half = 0.5 * (1 + 1e-12);
  const first = (of: (step: SurvivalStep) => number): number =>
    steps.find((step) => of(step) <= half)?.time ?? Infinity;
  const estimate = first((step) => step.survival);
  if (estimate === Infinity)
    return { estimate: null, because: "more than one half had no event to the end of observation" };
  return {
    estimate,
    interval: {
      low: first((step) => (step.survival === 0 ? 0 : (step.interval?.low ?? 1))),
      high: first((step) => (step.survival === 0 ? 0 : (step.interval?.high ?? 1))),
    },
  };
}
