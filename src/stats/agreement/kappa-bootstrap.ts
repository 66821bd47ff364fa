import { requireLevel, requireOptions } from "../guards.js";
import { requireResamples } from "./require-resamples.js";
import { agreeingWeights } from "./agreeing-weights.js";
import type { AgreementWeights } from "./disagreement-weights.js";
import { pairsCoefficient } from "./pairs-coefficient.js";
import { resampleCoefficients, type Resampled } from "./resample-coefficients.js";
import { tableMargins, type SquareTable } from "./square-table.js";

export type KappaBootstrap = {
  readonly method: "kappa, BCa bootstrap over radiographs";
  readonly weights: AgreementWeights;
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  readonly n: number;
} & Resampled;

/**
 * Kappa of two raters with limits from resampled radiographs, for tables too small for the large-sample interval.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @param options.weights "unweighted" (default), "linear", "quadratic" or disagreement weights
 * @param options.resamples at least 100; default 2,000
 * @param options.seed integer, 0 to 2^32 - 1; default 1
 * @throws RangeError when table, weights, level, resamples or seed are out of range; TypeError for unknown options
 * @see Efron 1987, J Am Stat Assoc 82:171-185
 * @example kappaBootstrap([[88, 14, 18], [10, 40, 10], [2, 6, 12]], { resamples: 100 }).estimate // => 0.4915254237
 */
export function kappaBootstrap(
  table: SquareTable,
  options: {
    readonly weights?: AgreementWeights;
    readonly level?: number;
    readonly resamples?: number;
    readonly seed?: number;
  } = {},
): KappaBootstrap {
  requireOptions("kappaBootstrap", options, ["weights", "level", "resamples", "seed"]);
  const { weights = "unweighted", level = 0.95, resamples = 2000, seed = 1 } = options;
  requireLevel("kappaBootstrap", level);
  requireResamples("kappaBootstrap", resamples);
  const { n } = tableMargins("kappaBootstrap", table);
  const readings = table.flatMap((row, a) =>
    row.flatMap((count, b) => Array.from({ length: count }, (): readonly number[] => [a, b])),
  );
  const coefficient = pairsCoefficient(readings, [[0, 1]], agreeingWeights("kappaBootstrap", table.length, weights));
  const [resampled] = resampleCoefficients([coefficient], { resamples, seed, level });
  return { method: "kappa, BCa bootstrap over radiographs", weights, level, resamples, seed, n, ...resampled! };
}
