import { requireNumbers } from "../guards.js";

/** How long each case was seen, and whether the event ended that time. */
export interface Durations {
  /** Zero or more, in one unit for all. */
  readonly times: readonly number[];
  /** True where the event happened at that time, false where the case was last seen without it. */
  readonly events: readonly boolean[];
}

/** Throws unless times and events are equally many, times zero or more and finite; `name` tells the group. */
export function requireDurations(caller: string, { times, events }: Durations, name = ""): void {
  const of = name ? `${name}.` : "";
  requireNumbers(caller, `${of}times`, times, 0);
  if (events.length !== times.length)
    throw new RangeError(`${caller}: ${of}events must be as many as times (${times.length}), got ${events.length}`);
  const negative = times.findIndex((time) => time < 0);
  if (negative >= 0)
    throw new RangeError(`${caller}: ${of}times[${negative}] must be zero or more, got ${times[negative]}`);
}

/** What happened at one time. A case last seen at the time of an event was still at risk of it. */
export interface RiskTime {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  readonly censored: number;
}

/**
 * Distinct times with the cases at risk just before, the events and the cases last seen.
 *
 * @param durations checked durations
 * @example riskTimes({ times: [2, 1, 2], events: [true, false, false] })[1] // => { time: 2, atRisk: 2, events: 1, censored: 1 }
 */
export function riskTimes({ times, events }: Durations): readonly RiskTime[] {
  const order = times.map((_, index) => index).sort((a, b) => times[a]! - times[b]!);
  const result: RiskTime[] = [];
  for (let from = 0; from < order.length;) {
    const time = times[order[from]!]!;
    let to = from;
    let failed = 0;
    for (; to < order.length && times[order[to]!] === time; to++) if (events[order[to]!]) failed++;
    result.push({ time, atRisk: order.length - from, events: failed, censored: to - from - failed });
    from = to;
  }
  return result;
}
