import { requireLevel, requireOptions } from "../guards.js";
import { agreeingWeights } from "./agreeing-weights.js";
import { allPairs } from "./all-pairs.js";
import type { AgreementWeights } from "./disagreement-weights.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";
import { pairsCoefficient, type ColumnPair } from "./pairs-coefficient.js";
import type { PooledCoefficient } from "./pooled-coefficient.js";
import { resampleCoefficients, type Resampled } from "./resample-coefficients.js";
import { requireResamples } from "./require-resamples.js";

/** Who made a column of readings, and on which occasion. */
export interface Occasion {
  readonly rater: string;
  readonly occasion: number;
}

export interface ObserverVariation {
  readonly method: "kappa pooled over pairs of columns, BCa bootstrap over radiographs";
  readonly weights: AgreementWeights;
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  /** The same rater on two occasions. */
  readonly intra: { readonly pairs: readonly ColumnPair[]; readonly kappa: Resampled };
  /** Two raters on the same occasion. */
  readonly inter: { readonly pairs: readonly ColumnPair[]; readonly kappa: Resampled };
  /** Intra less inter. */
  readonly difference: Resampled;
}

/**
 * Agreement of raters with themselves against agreement with each other, never mixed.
 *
 * @param given grades as places in the scale, one row a radiograph, one column a rater on one occasion
 * @param options.columns who read each column and when
 * @param options.weights "unweighted" (default), "linear", "quadratic" or disagreement weights
 * @throws RangeError when readings, columns, weights, level, resamples or seed are out of range; TypeError for unknown options
 * @see Conger 1980, Psychol Bull 88:322-328, for the pooled kappa; Efron 1987, J Am Stat Assoc 82:171-185
 * @example observerVariation({ grades: 2, readings: [[0, 0, 0], [1, 1, 0], [1, 1, 1], [0, 0, 0]] }, { columns: [{ rater: "A", occasion: 1 }, { rater: "A", occasion: 2 }, { rater: "B", occasion: 1 }], resamples: 100 }).intra.kappa.estimate // => 1
 */
export function observerVariation(
  given: GradeReadings,
  options: {
    readonly columns: readonly Occasion[];
    readonly weights?: AgreementWeights;
    readonly level?: number;
    readonly resamples?: number;
    readonly seed?: number;
  },
): ObserverVariation {
  requireOptions("observerVariation", options, ["columns", "weights", "level", "resamples", "seed"]);
  const { columns, weights = "unweighted", level = 0.95, resamples = 2000, seed = 1 } = options;
  requireLevel("observerVariation", level);
  requireResamples("observerVariation", resamples);
  const count = requireGradeReadings("observerVariation", given);
  if (columns.length !== count)
    throw new RangeError(
      `observerVariation: columns must describe ${count} columns of readings, got ${columns.length}`,
    );
  const agreeing = agreeingWeights("observerVariation", given.grades, weights);
  const intra = allPairs(count).filter(([a, b]) => columns[a]!.rater === columns[b]!.rater);
  const inter = allPairs(count).filter(
    ([a, b]) => columns[a]!.rater !== columns[b]!.rater && columns[a]!.occasion === columns[b]!.occasion,
  );
  const within = pairsCoefficient(given.readings, intra, agreeing);
  const between = pairsCoefficient(given.readings, inter, agreeing);
  const difference: PooledCoefficient = { ...within, value: (times) => within.value(times) - between.value(times) };
  const [a, b, c] = resampleCoefficients([within, between, difference], { resamples, seed, level });
  return {
    method: "kappa pooled over pairs of columns, BCa bootstrap over radiographs",
    weights,
    level,
    resamples,
    seed,
    intra: { pairs: intra, kappa: orNoPairs(a!, intra, "no rater read on two occasions") },
    inter: { pairs: inter, kappa: orNoPairs(b!, inter, "no two raters read on the same occasion") },
    difference: orNoPairs(c!, intra.length && inter.length ? intra : [], "it needs both kinds of pairs"),
  };
}

function orNoPairs(resampled: Resampled, pairs: readonly ColumnPair[], because: string): Resampled {
  return pairs.length === 0 ? { estimate: null, because } : resampled;
}
