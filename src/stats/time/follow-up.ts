import { requireLevel, requireNumbers, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { requireDurations, type Durations } from "./durations.js";
import { kaplanMeier, type KaplanMeier } from "./kaplan-meier.js";

export interface FollowUp {
  readonly method: "follow-up by reverse Kaplan-Meier";
  readonly n: number;
  readonly events: number;
  readonly level: number;
  readonly shortest: number;
  readonly longest: number;
  /** Median of the time each case would have been seen had no event ended it. */
  readonly median: KaplanMeier["median"];
  /** Time seen over time that could have been seen to the closing date; null when that was not given. */
  readonly completeness: number | null;
}

/**
 * How long and how completely a series was followed. An early event does not shorten the follow-up: such a case counts
 * as followed at least so long.
 *
 * @param durations.times time from treatment to the event or to the last visit
 * @param durations.events true where the event ended observation
 * @param options.level coverage of the limits of the median; default 0.95
 * @param options.potential time from treatment to the closing date, one a case, each at least its time
 * @returns the summary, or null with the reason when there is no case
 * @throws RangeError when durations, potential times or level are not valid
 * @see Schemper and Smith 1996, Control Clin Trials 17:343-346; completeness of Clark, Altman and De Stavola 2002,
 *   Lancet 359:1309-1310
 * @example followUp({ times: [12, 24, 6], events: [false, false, true] }).median.estimate // => 12
 */
export function followUp(
  durations: Durations,
  options: { readonly level?: number; readonly potential?: readonly number[] } = {},
): FollowUp | NotEstimable {
  requireOptions("followUp", options, ["level", "potential"]);
  const { level = 0.95, potential } = options;
  requireLevel("followUp", level);
  requireDurations("followUp", durations);
  const { times, events } = durations;
  if (potential) requirePotential(times, potential);
  const reverse = kaplanMeier({ times, events: events.map((event) => !event) }, { level });
  if ("estimate" in reverse) return reverse;
  return {
    method: "follow-up by reverse Kaplan-Meier",
    n: times.length,
    events: events.filter(Boolean).length,
    level,
    shortest: reverse.steps[0]!.time,
    longest: reverse.steps.at(-1)!.time,
    median:
      reverse.median.estimate === null
        ? { estimate: null, because: "events ended the observation of too many cases" }
        : reverse.median,
    completeness: potential ? completeness(times, events, potential) : null,
  };
}

function requirePotential(times: readonly number[], potential: readonly number[]): void {
  requireNumbers("followUp", "potential", potential, 0);
  if (potential.length !== times.length)
    throw new RangeError(`followUp: potential must be as many as times (${times.length}), got ${potential.length}`);
  const short = potential.findIndex((time, index) => time < times[index]!);
  if (short >= 0)
    throw new RangeError(
      `followUp: potential[${short}] must be at least the time seen (${times[short]}), got ${potential[short]}`,
    );
}

/** A case whose event came was seen as long as it had to be. */
function completeness(
  times: readonly number[],
  events: readonly boolean[],
  potential: readonly number[],
): number | null {
  const seen = times.reduce((sum, time) => sum + time, 0);
  const whole = potential.reduce((sum, time, index) => sum + (events[index] ? times[index]! : time), 0);
  return whole === 0 ? null : seen / whole;
}
