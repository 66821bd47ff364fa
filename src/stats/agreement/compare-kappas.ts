import { normalQuantile, normalUpper } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { agreeingWeights } from "./agreeing-weights.js";
import type { AgreementWeights } from "./disagreement-weights.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";
import type { ColumnPair } from "./pairs-coefficient.js";

interface ComparisonShared {
  readonly method: "difference of two kappas on the same radiographs, delta method";
  readonly weights: AgreementWeights;
  readonly level: number;
  /** Radiographs graded in all columns concerned; the others are left out. */
  readonly images: number;
  readonly incomplete: number;
}

export type KappaComparison = ComparisonShared &
  (
    | {
        readonly first: number;
        readonly second: number;
        /** First less second. */
        readonly estimate: number;
        readonly standardError: number;
        readonly interval: Interval;
        readonly test: { readonly z: number; readonly p: number } | NotEstimable;
      }
    | NotEstimable
  );

/**
 * Difference of two kappas measured on the same radiographs, which makes them dependent (also through a shared rater).
 *
 * @param given grades as places in the scale, one row a radiograph, one column a set of readings
 * @param options.first the two columns of the first kappa, 0 first
 * @param options.second the two columns of the second; a column may serve in both
 * @param options.weights "unweighted" (default), "linear", "quadratic" or disagreement weights
 * @throws RangeError when readings, columns, weights or level are out of range; TypeError for unknown options
 * @see Vanbelle 2017, Psychometrika 82:399-419 (delta method); Fleiss, Cohen and Everitt 1969 for the influence of a radiograph
 * @example compareKappas({ grades: 2, readings: [[0, 0, 1], [0, 0, 0], [1, 1, 1], [1, 0, 1]] }, { first: [0, 1], second: [0, 2] }).estimate // => 0
 */
export function compareKappas(
  given: GradeReadings,
  options: {
    readonly first: ColumnPair;
    readonly second: ColumnPair;
    readonly weights?: AgreementWeights;
    readonly level?: number;
  },
): KappaComparison {
  requireOptions("compareKappas", options, ["first", "second", "weights", "level"]);
  const { first, second, weights = "unweighted", level = 0.95 } = options;
  requireLevel("compareKappas", level);
  const columns = requireGradeReadings("compareKappas", given);
  for (const column of [...first, ...second])
    if (!(Number.isInteger(column) && column >= 0 && column < columns))
      throw new RangeError(`compareKappas: a column must be 0 to ${columns - 1}, got ${column}`);
  const agreeing = agreeingWeights("compareKappas", given.grades, weights);
  const rows = given.readings.filter((row) => [...first, ...second].every((column) => row[column] !== null));
  const images = rows.length;
  const method = "difference of two kappas on the same radiographs, delta method";
  const shared = { method, weights, level, images, incomplete: given.readings.length - images } as const;
  if (images === 0) return { ...shared, estimate: null, because: "no radiograph has all the readings compared" };
  const one = influences(rows as readonly (readonly number[])[], first, agreeing);
  const two = influences(rows as readonly (readonly number[])[], second, agreeing);
  if (one === null || two === null)
    return {
      ...shared,
      estimate: null,
      because: "one of the kappas is undefined: only one and the same grade was used",
    };
  const variance = one.each.reduce((sum, value, image) => sum + (value - two.each[image]!) ** 2, 0) / images ** 2;
  const standardError = Math.sqrt(variance);
  const estimate = one.kappa - two.kappa;
  const half = normalQuantile((1 + level) / 2) * standardError;
  const interval = { low: estimate - half, high: estimate + half };
  return {
    ...shared,
    first: one.kappa,
    second: two.kappa,
    estimate,
    standardError,
    interval,
    test: test(estimate, standardError),
  };
}

function test(estimate: number, standardError: number): { z: number; p: number } | NotEstimable {
  if (standardError === 0) return { estimate: null, because: "the readings leave the difference no spread" };
  const z = estimate / standardError;
  return { z, p: 2 * normalUpper(Math.abs(z)) };
}

/** Kappa and how far each radiograph moves it; null when chance agreement is 1. */
function influences(
  rows: readonly (readonly number[])[],
  [g, h]: ColumnPair,
  agreeing: readonly (readonly number[])[],
): { readonly kappa: number; readonly each: readonly number[] } | null {
  const n = rows.length;
  const share = (column: number): number[] => {
    const counts = agreeing.map(() => 0);
    for (const row of rows) counts[row[column]!]! += 1 / n;
    return counts;
  };
  const apart = agreeing.map((row) => row.map((weight) => 1 - weight));
  const [rowShares, columnShares] = [share(g), share(h)];
  const byRow = apart.map((row) => row.reduce((sum, weight, b) => sum + weight * columnShares[b]!, 0));
  const byColumn = apart.map((_, b) => apart.reduce((sum, row, a) => sum + row[b]! * rowShares[a]!, 0));
  const chance = byRow.reduce((sum, value, a) => sum + value * rowShares[a]!, 0);
  if (chance === 0) return null;
  const observed = rows.reduce((sum, row) => sum + apart[row[g]!]![row[h]!]!, 0) / n;
  const each = rows.map((row) => {
    const [a, b] = [row[g]!, row[h]!];
    return (observed * (byRow[a]! + byColumn[b]! - chance) - apart[a]![b]! * chance) / chance ** 2;
  });
  return { kappa: 1 - observed / chance, each };
}
