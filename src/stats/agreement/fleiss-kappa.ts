import { normalQuantile, normalUpper } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { completeReadings } from "./complete-readings.js";
import { gradeProfiles, type GradeProfile } from "./grade-profiles.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";

interface FleissShared {
  readonly method: "Fleiss' kappa, interval by Gwet 2008";
  readonly level: number;
  readonly raters: number;
  /** Radiographs that every rater graded. */
  readonly images: number;
  /** Radiographs left out for a missing reading. */
  readonly incomplete: number;
}

/** Kappa of one grade against all others together. */
export type FleissGrade = { readonly grade: number; readonly share: number } & (
  | { readonly estimate: number; readonly nullStandardError: number; readonly z: number; readonly p: number }
  | NotEstimable
);

export interface FleissEstimate extends FleissShared {
  readonly estimate: number;
  readonly observed: number;
  readonly chance: number;
  /** For the interval: radiographs sampled, raters fixed. */
  readonly standardError: number;
  readonly interval: Interval | NotEstimable;
  /** For the test that kappa is 0 only (Fleiss, Nee and Landis 1979). */
  readonly nullStandardError: number;
  readonly z: number;
  readonly p: number;
  readonly grades: readonly FleissGrade[];
}

export type FleissResult = FleissEstimate | (FleissShared & NotEstimable);

/**
 * Fleiss' kappa of several raters on the radiographs that all of them graded, in all and for each grade.
 *
 * @param given grades as places in the scale, one row a radiograph, one column a rater
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the estimate, or why there is none: no complete radiograph, or one grade used by all
 * @throws RangeError when readings or level are out of range; TypeError for unknown options
 * @see Fleiss 1971, Psychol Bull 76:378-382; Fleiss, Nee and Landis 1979, Psychol Bull 86:974-977, for the test;
 *   Gwet 2008, Br J Math Stat Psychol 61:29-48, for the standard error of the interval
 * @example fleissKappa({ grades: 2, readings: [[0, 0, 0], [0, 1, 1], [1, 1, 1], [0, 0, 1]] }).estimate // => 0.333333333
 */
export function fleissKappa(given: GradeReadings, options: { readonly level?: number } = {}): FleissResult {
  requireOptions("fleissKappa", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("fleissKappa", level);
  const raters = requireGradeReadings("fleissKappa", given);
  const complete = completeReadings(given.readings);
  const n = complete.length;
  const method = "Fleiss' kappa, interval by Gwet 2008";
  const shared = { method, level, raters, images: n, incomplete: given.readings.length - n } as const;
  if (n === 0) return { ...shared, estimate: null, because: "no radiograph was graded by every rater" };
  const { profiles } = gradeProfiles({ grades: given.grades, readings: complete });
  const shares = profiles[0]!.counts.map(
    (_, grade) => profiles.reduce((sum, { counts, times }) => sum + times * counts[grade]!, 0) / (n * raters),
  );
  if (shares.includes(1)) return { ...shared, estimate: null, because: "only one grade was used" };
  const agreement = profiles.map(({ counts }) => pairsAlike(counts, raters));
  const observed = profiles.reduce((sum, { times }, k) => sum + times * agreement[k]!, 0) / n;
  const chance = shares.reduce((sum, share) => sum + share ** 2, 0);
  const estimate = (observed - chance) / (1 - chance);
  const standardError = spread({ profiles, agreement, shares, estimate, chance }, n, raters);
  return {
    ...shared,
    estimate,
    observed,
    chance,
    standardError,
    interval: limits(estimate, standardError, n, level),
    ...overallTest(estimate, shares, n, raters),
    grades: shares.map((share, grade) => oneGrade(grade, share, profiles, n, raters)),
  };
}

function pairsAlike(counts: readonly number[], raters: number): number {
  return counts.reduce((sum, count) => sum + count * (count - 1), 0) / (raters * (raters - 1));
}

/** Influence of each radiograph through its agreement and through the shares of the grades. */
function spread(
  given: {
    readonly profiles: readonly GradeProfile[];
    readonly agreement: readonly number[];
    readonly shares: readonly number[];
    readonly estimate: number;
    readonly chance: number;
  },
  n: number,
  raters: number,
): number {
  const { profiles, agreement, shares, estimate, chance } = given;
  let squares = 0;
  profiles.forEach(({ counts, times }, k) => {
    const own = (agreement[k]! - chance) / (1 - chance);
    const ownChance = counts.reduce((sum, count, grade) => sum + (count / raters) * shares[grade]!, 0);
    squares += times * (own - (2 * (1 - estimate) * (ownChance - chance)) / (1 - chance) - estimate) ** 2;
  });
  return n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0;
}

function limits(estimate: number, standardError: number, n: number, level: number): FleissEstimate["interval"] {
  if (n < 2) return { estimate: null, because: "one radiograph gives no spread" };
  const half = normalQuantile((1 + level) / 2) * standardError;
  return { low: estimate - half, high: estimate + half };
}

function overallTest(estimate: number, shares: readonly number[], n: number, raters: number) {
  const between = shares.reduce((sum, share) => sum + share * (1 - share), 0);
  const skew = shares.reduce((sum, share) => sum + share * (1 - share) * (1 - 2 * share), 0);
  const nullStandardError =
    (Math.SQRT2 * Math.sqrt(between ** 2 - skew)) / (between * Math.sqrt(n * raters * (raters - 1)));
  return withTest(estimate, nullStandardError);
}

function oneGrade(
  grade: number,
  share: number,
  profiles: readonly GradeProfile[],
  n: number,
  raters: number,
): FleissGrade {
  if (share === 0) return { grade, share, estimate: null, because: "no rater gave this grade" };
  const mixed = profiles.reduce(
    (sum, { counts, times }) => sum + times * counts[grade]! * (raters - counts[grade]!),
    0,
  );
  const estimate = 1 - mixed / (n * raters * (raters - 1) * share * (1 - share));
  return { grade, share, estimate, ...withTest(estimate, Math.sqrt(2 / (n * raters * (raters - 1)))) };
}

function withTest(estimate: number, nullStandardError: number) {
  const z = estimate / nullStandardError;
  return { nullStandardError, z, p: 2 * normalUpper(Math.abs(z)) };
}
