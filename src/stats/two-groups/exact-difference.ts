import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import { orderByScore, probabilityAsExtreme, type Extreme } from "./score-order.js";

export const exactDifferenceMethods = ["chanZhang", "agrestiMin"] as const;
export type ExactDifferenceMethod = (typeof exactDifferenceMethods)[number];

/** Difference of two independent proportions, first minus second, with exact unconditional limits. */
export interface ExactDifferenceResult extends TwoGroups {
  readonly method: ExactDifferenceMethod;
  readonly level: number;
  readonly estimate: number;
  readonly interval: Interval;
}

/** Most trials of both groups together that the exact limits are computed for. */
export const mostTrials = 2_000;

/**
 * Exact unconditional limits of the difference of two proportions: tables ordered by the score statistic, its tail maximised
 * over the second proportion. "chanZhang" inverts two one-sided tests at (1 - level)/2, "agrestiMin" one two-sided test. The
 * tail is not monotone in the difference, so each limit is scanned for from outside in, in steps of 0.01 or finer, and then
 * halved to 1e-8: an accepted value between two rejected steps is not looked for.
 * @param groups successes of trials in each group, at most 2,000 trials together
 * @param options level, default 0.95; method, "chanZhang" (default) or "agrestiMin", the shorter
 * @throws RangeError when a count or an option is out of range; TypeError when an option is unknown
 * @see Chan, Zhang 1999, Biometrics 55:1202-1209; Agresti, Min 2001, Biometrics 57:963-971
 * @example exactDifference({ first: { successes: 5, trials: 5 }, second: { successes: 0, trials: 5 } }).interval.high // => 1
 */
export function exactDifference(
  { first, second }: TwoGroups,
  options: { readonly level?: number; readonly method?: ExactDifferenceMethod } = {},
): ExactDifferenceResult {
  requireTwoGroups("exactDifference", { first, second });
  requireOptions("exactDifference", options, ["level", "method"]);
  const { level = 0.95, method = "chanZhang" } = options;
  requireLevel("exactDifference", level);
  if (!exactDifferenceMethods.includes(method))
    throw new RangeError(`exactDifference: method must be "chanZhang" or "agrestiMin", got ${method}`);
  const trials = first.trials + second.trials;
  if (trials > mostTrials)
    throw new RangeError(`exactDifference: both groups together must have at most ${mostTrials} trials, got ${trials}`);
  const [sides, alpha] =
    method === "chanZhang" ? (["upper", (1 - level) / 2] as const) : (["both", 1 - level] as const);
  const estimate = first.successes / first.trials - second.successes / second.trials;
  const low = lowerLimit({ first, second }, sides, alpha);
  const high = -lowerLimit({ first: second, second: first }, sides, alpha);
  return { method, first, second, level, estimate, interval: { low, high } };
}

/** The first difference, from -1 up, that is not rejected. */
function lowerLimit(groups: TwoGroups, sides: Extreme, alpha: number): number {
  const { first, second } = groups;
  const estimate = first.successes / first.trials - second.successes / second.trials;
  if (estimate === -1) return -1;
  const steps = Math.ceil((estimate + 1) * Math.min(500, Math.max(100, 20_000 / (first.trials + second.trials))));
  const accepted = (difference: number): boolean =>
    exceeds(groups, difference, orderByScore(groups, difference, sides), alpha);
  let low = -1;
  let high = estimate;
  for (let step = 1; step < steps; step++) {
    const difference = -1 + ((estimate + 1) * step) / steps;
    if (accepted(difference)) {
      high = difference;
      break;
    }
    low = difference;
  }
  while (high - low > 1e-8) {
    const middle = (low + high) / 2;
    if (accepted(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const places = 60;

/** Whether some second proportion gives the tables of the order a probability above alpha. */
function exceeds(
  groups: TwoGroups,
  difference: number,
  order: ReturnType<typeof orderByScore>,
  alpha: number,
): boolean {
  const from = Math.max(0, -difference);
  const to = Math.min(1, 1 - difference);
  // Evenly spread in the angle, so that the places crowd at the ends, where the probability bends most.
  const at = (place: number): number =>
    probabilityAsExtreme(
      groups,
      difference,
      from + (to - from) * Math.sin((place / places) * (Math.PI / 2)) ** 2,
      order,
    );
  const values = new Float64Array(places + 1);
  for (let place = 0; place <= places; place++) {
    values[place] = at(place);
    if (values[place]! > alpha) return true;
  }
  for (let place = 0; place <= places; place++) {
    const value = values[place]!;
    const peak = value >= (values[place - 1] ?? 0) && value >= (values[place + 1] ?? 0);
    if (peak && value > 0.9 * alpha && peakValue(at, place) > alpha) return true;
  }
  return false;
}

/** Largest value next to a place, by golden section. */
function peakValue(at: (place: number) => number, place: number): number {
  const ratio = (3 - Math.sqrt(5)) / 2;
  let low = Math.max(0, place - 1);
  let high = Math.min(places, place + 1);
  let one = low + ratio * (high - low);
  let two = high - ratio * (high - low);
  let [atOne, atTwo] = [at(one), at(two)];
  for (let turn = 0; turn < 22; turn++)
    if (atOne > atTwo) {
      [high, two, atTwo] = [two, one, atOne];
      one = low + ratio * (high - low);
      atOne = at(one);
    } else {
      [low, one, atOne] = [one, two, atTwo];
      two = high - ratio * (high - low);
      atTwo = at(two);
    }
  return Math.max(atOne, atTwo);
}
