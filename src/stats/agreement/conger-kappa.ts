import { studentTQuantile } from "../../numeric/student-t.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { agreeingWeights } from "./agreeing-weights.js";
import { completeReadings } from "./complete-readings.js";
import type { AgreementWeights } from "./disagreement-weights.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";
import { jackknife } from "./jackknife.js";
import { pairsCoefficient } from "./pairs-coefficient.js";
import { allPairs } from "./all-pairs.js";

interface CongerShared {
  readonly method: "Conger's kappa, jackknife over radiographs";
  readonly weights: AgreementWeights;
  readonly level: number;
  readonly raters: number;
  readonly images: number;
  readonly incomplete: number;
}

export interface CongerEstimate extends CongerShared {
  readonly estimate: number;
  readonly observed: number;
  readonly chance: number;
  /** Null when leaving out one radiograph leaves nothing to estimate. */
  readonly standardError: number | null;
  readonly interval: Interval | NotEstimable;
}

export type CongerResult = CongerEstimate | (CongerShared & NotEstimable);

/**
 * Conger's kappa: Cohen's kappa carried to several raters, each keeping the own shares of the grades; for two it is Cohen's.
 *
 * @param given grades as places in the scale, one row a radiograph, one column a rater; complete rows are used
 * @param options.weights "unweighted" (default), "linear", "quadratic" or disagreement weights
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when readings, weights or level are out of range; TypeError for unknown options
 * @see Conger 1980, Psychol Bull 88:322-328; jackknife: Efron and Stein 1981, Ann Stat 9:586-596
 * @example congerKappa({ grades: 2, readings: [[0, 0], [0, 1], [0, 0], [1, 1]] }).estimate // => 0.5
 */
export function congerKappa(
  given: GradeReadings,
  options: { readonly weights?: AgreementWeights; readonly level?: number } = {},
): CongerResult {
  requireOptions("congerKappa", options, ["weights", "level"]);
  const { weights = "unweighted", level = 0.95 } = options;
  requireLevel("congerKappa", level);
  const raters = requireGradeReadings("congerKappa", given);
  const complete = completeReadings(given.readings);
  const images = complete.length;
  const shared = {
    method: "Conger's kappa, jackknife over radiographs",
    weights,
    level,
    raters,
    images,
    incomplete: given.readings.length - images,
  } as const;
  if (images === 0) return { ...shared, estimate: null, because: "no radiograph was graded by every rater" };
  const coefficient = pairsCoefficient(
    complete,
    allPairs(raters),
    agreeingWeights("congerKappa", given.grades, weights),
  );
  const estimate = coefficient.value(coefficient.times);
  if (Number.isNaN(estimate)) return { ...shared, estimate: null, because: "only one grade was used" };
  const parts = coefficient.parts(coefficient.times);
  const { standardError } = jackknife(coefficient);
  if (standardError === null) {
    const because = "without one radiograph the coefficient is undefined, so it has no jackknife error";
    return { ...shared, estimate, ...parts, standardError, interval: { estimate: null, because } };
  }
  const half = studentTQuantile((1 + level) / 2, images - 1) * standardError;
  const interval = { low: estimate - half, high: estimate + half };
  return { ...shared, estimate, ...parts, standardError, interval };
}
