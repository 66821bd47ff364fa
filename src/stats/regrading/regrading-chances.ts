import { normalCdf, normalUpper } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { gradePlace, requireCuts, requireValues } from "./cut-points.js";

/** What the measured value is held against: the true value behind it, or another observer's reading. */
export const comparedWith = ["true value", "another reading"] as const;
export type ComparedWith = (typeof comparedWith)[number];

export interface RegradedCase {
  readonly value: number;
  /** Place of its grade, 0 first. */
  readonly grade: number;
  /** Probability of each grade. */
  readonly grades: readonly number[];
  /** Probability of another grade than its own, and of another treatment. */
  readonly changed: number;
  readonly treatmentChanged: number;
}

export interface ChangedCount {
  readonly expected: number;
  /** Central range of the number that would change, in whole cases. */
  readonly range: Interval;
}

export interface RegradingChances {
  readonly method: "normal error about each measurement";
  readonly cuts: readonly number[];
  readonly error: number;
  readonly comparedWith: ComparedWith;
  readonly level: number;
  readonly cases: readonly RegradedCase[];
  readonly grades: ChangedCount;
  readonly treatments: ChangedCount;
}

/**
 * Chance that each case has another grade, given the observers' own error, and how many would change in all.
 *
 * Held against the true value the error is one standard error of measurement; against another reading both carry it, so it
 * is sqrt(2) times as large. All true values are taken to be alike beforehand.
 *
 * @param values measurements, finite
 * @param options.cuts cut-points, rising; a value above one is in the next grade
 * @param options.error standard error of measurement, above 0, in the unit of the values
 * @param options.comparedWith "true value" (default) or "another reading"
 * @param options.treatments for each grade the name of its treatment; default: every grade its own
 * @param options.level of the ranges, in (0, 1); default 0.95
 * @throws RangeError when an argument is out of range; TypeError for unknown options
 * @see Altman and Royston 2006, BMJ 332:1080, on cutting measurements
 * @example regradingChances([35], { cuts: [100 / 3, 200 / 3], error: 5 }).cases[0].changed // => 0.36944134
 */
export function regradingChances(
  values: readonly number[],
  options: {
    readonly cuts: readonly number[];
    readonly error: number;
    readonly comparedWith?: ComparedWith;
    readonly treatments?: readonly string[];
    readonly level?: number;
  },
): RegradingChances {
  requireOptions("regradingChances", options, ["cuts", "error", "comparedWith", "treatments", "level"]);
  const { cuts, error, comparedWith: compared = "true value", level = 0.95 } = options;
  requireLevel("regradingChances", level);
  requireCuts("regradingChances", cuts);
  requireValues("regradingChances", values);
  if (!(error > 0 && Number.isFinite(error)))
    throw new RangeError(`regradingChances: error must be above 0, got ${error}`);
  if (!comparedWith.includes(compared))
    throw new TypeError(
      `regradingChances: comparedWith must be one of ${comparedWith.join(", ")}, got "${String(compared)}"`,
    );
  const treatments = options.treatments ?? [...cuts.keys(), cuts.length].map(String);
  if (treatments.length !== cuts.length + 1)
    throw new RangeError(
      `regradingChances: treatments must name one for each of ${cuts.length + 1} grades, got ${treatments.length}`,
    );
  const sd = compared === "true value" ? error : Math.SQRT2 * error;
  const cases = values.map((value) => regraded(value, cuts, sd, treatments));
  return {
    method: "normal error about each measurement",
    cuts,
    error,
    comparedWith: compared,
    level,
    cases,
    grades: countOf(
      cases.map((each) => each.changed),
      level,
    ),
    treatments: countOf(
      cases.map((each) => each.treatmentChanged),
      level,
    ),
  };
}

function regraded(value: number, cuts: readonly number[], sd: number, treatments: readonly string[]): RegradedCase {
  const grade = gradePlace(value, cuts);
  const ends = [-Infinity, ...cuts, Infinity].map((cut) => (cut - value) / sd);
  // Each piece from the tail on its own side, so that far grades keep their small chances.
  const grades = ends.slice(1).map((high, k) => {
    const low = ends[k]!;
    return low > 0 ? normalUpper(low) - normalUpper(high) : normalCdf(high) - normalCdf(low);
  });
  const sum = (other: (k: number) => boolean): number =>
    grades.reduce((total, chance, k) => total + (other(k) ? chance : 0), 0);
  return {
    value,
    grade,
    grades,
    changed: sum((k) => k !== grade),
    treatmentChanged: sum((k) => treatments[k] !== treatments[grade]),
  };
}

/** Exact distribution of the number of changes, each with its own chance, one case after the other. */
function countOf(chances: readonly number[], level: number): ChangedCount {
  let mass = [1];
  for (const chance of chances)
    mass = [...mass, 0].map((stay, k) => stay * (1 - chance) + (k > 0 ? mass[k - 1]! * chance : 0));
  const quantile = (p: number): number => {
    let below = 0;
    const found = mass.findIndex((each) => (below += each) >= p);
    return found < 0 ? chances.length : found;
  };
  return {
    expected: chances.reduce((sum, chance) => sum + chance, 0),
    range: { low: quantile((1 - level) / 2), high: quantile((1 + level) / 2) },
  };
}
