import { studentTQuantile } from "../../numeric/student-t.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { agreeingWeights } from "./agreeing-weights.js";
import type { AgreementWeights } from "./disagreement-weights.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";
import { gwetSums, type GwetSums } from "./gwet-coefficient.js";

interface GwetShared {
  readonly method: "AC1 (Gwet 2008)" | "AC2 (Gwet 2014)";
  readonly weights: AgreementWeights;
  readonly level: number;
  /** Radiographs with a reading: they give the shares of the grades. */
  readonly images: number;
  /** Radiographs with two or more: they give the agreement. */
  readonly pairedImages: number;
}

export interface GwetEstimate extends GwetShared {
  readonly estimate: number;
  readonly observed: number;
  readonly chance: number;
  readonly standardError: number;
  /** By Student's t on radiographs less 1; not cut to the possible range. */
  readonly interval: Interval | NotEstimable;
}

export type GwetResult = GwetEstimate | (GwetShared & NotEstimable);

/**
 * Gwet's agreement coefficient for two or more raters with any gaps: AC1, or AC2 when weights are given.
 *
 * The variance treats raters as fixed and radiographs as sampled.
 *
 * @param given grades as places in the scale, one row a radiograph, one column a rater
 * @param options.weights "unweighted" (default, AC1), "linear", "quadratic" or disagreement weights
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when readings, weights or level are out of range; TypeError for unknown options
 * @see Gwet 2008, Br J Math Stat Psychol 61:29-48; Gwet 2014, Handbook of Inter-Rater Reliability, 4th ed, chapters 4 and 5
 * @example gwetAc({ grades: 2, readings: [[0, 0], [0, 1], [0, 0], [1, 1]] }).estimate // => 0.52941176
 */
export function gwetAc(
  given: GradeReadings,
  options: { readonly weights?: AgreementWeights; readonly level?: number } = {},
): GwetResult {
  requireOptions("gwetAc", options, ["weights", "level"]);
  const { weights = "unweighted", level = 0.95 } = options;
  requireLevel("gwetAc", level);
  requireGradeReadings("gwetAc", given);
  const sums = gwetSums(given, agreeingWeights("gwetAc", given.grades, weights));
  const { times } = sums.coefficient;
  const count = (least: number): number =>
    sums.readings.reduce((sum, read, k) => sum + (read >= least ? times[k]! : 0), 0);
  const shared = {
    method: weights === "unweighted" ? "AC1 (Gwet 2008)" : "AC2 (Gwet 2014)",
    weights,
    level,
    images: count(1),
    pairedImages: count(2),
  } as const;
  if (given.grades < 2) return { ...shared, estimate: null, because: "the scale has only one grade" };
  if (shared.pairedImages === 0) return { ...shared, estimate: null, because: "no radiograph has two readings" };
  return { ...shared, ...estimate(sums, shared.images, shared.pairedImages, level) };
}

function estimate(sums: GwetSums, n: number, paired: number, level: number): Omit<GwetEstimate, keyof GwetShared> {
  const { agreement, counts, readings, scale } = sums;
  const { times } = sums.coefficient;
  const shares = counts[0]!.map((_, grade) =>
    counts.reduce((sum, count, k) => sum + (readings[k]! > 0 ? (times[k]! * count[grade]!) / readings[k]! / n : 0), 0),
  );
  const observed = agreement.reduce((sum, value, k) => sum + (readings[k]! >= 2 ? (times[k]! * value) / paired : 0), 0);
  const chance = scale * shares.reduce((sum, share) => sum + share * (1 - share), 0);
  const value = (observed - chance) / (1 - chance);
  let squares = 0;
  readings.forEach((read, k) => {
    if (read === 0) return;
    // Influence of one radiograph, through its own agreement and through the shares of the grades.
    const own = read >= 2 ? ((n / paired) * (agreement[k]! - chance)) / (1 - chance) : 0;
    const ownChance = scale * counts[k]!.reduce((sum, count, grade) => sum + (count / read) * (1 - shares[grade]!), 0);
    const influence = own - (2 * (1 - value) * (ownChance - chance)) / (1 - chance);
    squares += times[k]! * (influence - value) ** 2;
  });
  const standardError = n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0;
  return { estimate: value, observed, chance, standardError, interval: limits(value, standardError, n, level) };
}

function limits(value: number, standardError: number, n: number, level: number): Interval | NotEstimable {
  if (n < 2) return { estimate: null, because: "one radiograph gives no spread" };
  const half = studentTQuantile((1 + level) / 2, n - 1) * standardError;
  return { low: value - half, high: value + half };
}
