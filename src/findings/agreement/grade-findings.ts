import type { GradedReadings } from "../../cases/readings/types.js";
import { agreeingWeights } from "../../stats/agreement/agreeing-weights.js";
import { allPairs } from "../../stats/agreement/all-pairs.js";
import { alphaCoefficient, type AlphaMetric } from "../../stats/agreement/alpha-coefficient.js";
import { congerKappa, type CongerResult } from "../../stats/agreement/conger-kappa.js";
import { fleissKappa, type FleissResult } from "../../stats/agreement/fleiss-kappa.js";
import { gwetAc, type GwetResult } from "../../stats/agreement/gwet-ac.js";
import { krippendorffAlpha } from "../../stats/agreement/krippendorff-alpha.js";
import { observerVariation, type ObserverVariation } from "../../stats/agreement/observer-variation.js";
import { pairsCoefficient, type ColumnPair } from "../../stats/agreement/pairs-coefficient.js";
import { raterPairs, type RaterPair } from "../../stats/agreement/rater-pairs.js";
import { resampleCoefficients, type Resampled } from "../../stats/agreement/resample-coefficients.js";
import type { NotEstimable } from "../../stats/types.js";
import { firstOccasions } from "./first-occasions.js";
import { planFindings, type SizeFindings } from "./plan-findings.js";
import type { AgreementOptions } from "./table-findings.js";

export type AlphaFinding = Resampled & { readonly images: number; readonly readings: number };

/** Everything that graded readings of two or more columns tell. */
export interface GradeFindings {
  readonly kind: "grades";
  readonly grades: readonly string[];
  readonly images: number;
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  readonly pairs: readonly RaterPair[];
  /** Columns behind the pooled coefficients: the first readings of each rater. */
  readonly pooled: readonly number[];
  /** BCa limits of each pair's kappa with linear weights, in the order of `pairs`. */
  readonly pairBootstrap: readonly Resampled[];
  readonly fleiss: FleissResult;
  readonly conger: CongerResult;
  readonly ac1: GwetResult;
  readonly ac2: GwetResult;
  readonly alpha: Readonly<Record<"nominal" | "ordinal" | "interval", AlphaFinding>>;
  /** Only when somebody read twice. */
  readonly variation: ObserverVariation | null;
  /** Radiographs and raters for the next study. */
  readonly plan: SizeFindings | NotEstimable;
}

/** Pairs, pooled coefficients and their limits from readings on grades; every resample serves all of them. */
export function gradeFindings(given: GradedReadings, options: AgreementOptions): GradeFindings {
  const { level, resamples, seed } = options;
  const readings = { grades: given.grades.length, readings: given.readings };
  const pooled = firstOccasions(given.columns);
  const several = pooled.length > 1;
  const raters = {
    ...readings,
    readings: several ? given.readings.map((row) => pooled.map((k) => row[k]!)) : given.readings,
  };
  const fleiss = fleissKappa(raters, { level });
  const linear = agreeingWeights("gradeFindings", given.grades.length, "linear");
  const scale = given.numbers ?? given.grades.map((_, place) => place + 1);
  const pairs = allPairs(given.columns.length);
  const metrics = ["nominal", "ordinal", "interval"] as const;
  const resampled = resampleCoefficients(
    [
      ...metrics.map((metric) => alphaCoefficient(scale, raters.readings, metric)),
      ...pairs.map((pair) =>
        pairsCoefficient(
          given.readings.map((row) => pairOf(row, pair)),
          [[0, 1]],
          linear,
        ),
      ),
    ],
    { resamples, seed, level },
  );
  const alpha = (metric: AlphaMetric, k: number): AlphaFinding => {
    const values = raters.readings.map((row) => row.map((grade) => (grade === null ? null : scale[grade]!)));
    const { images, readings: count, ...result } = krippendorffAlpha(values, { metric });
    const found = resampled[k]!;
    return result.estimate === null || found.estimate === null
      ? {
          estimate: null,
          because: result.estimate === null ? result.because : "it is undefined",
          images,
          readings: count,
        }
      : { ...found, estimate: result.estimate, images, readings: count };
  };
  return {
    kind: "grades",
    grades: given.grades,
    images: given.radiographs.length,
    level,
    resamples,
    seed,
    pairs: raterPairs(readings, { level }).pairs,
    pooled: several ? pooled : [...given.columns.keys()],
    pairBootstrap: resampled.slice(metrics.length),
    fleiss,
    plan: planFindings(fleiss, raters.readings, { level, seed }),
    conger: congerKappa(raters, { weights: "linear", level }),
    ac1: gwetAc(raters, { level }),
    ac2: gwetAc(raters, { weights: "linear", level }),
    alpha: { nominal: alpha("nominal", 0), ordinal: alpha("ordinal", 1), interval: alpha("interval", 2) },
    variation: given.columns.some((column) => column.occasion !== 1)
      ? observerVariation(readings, { columns: given.columns, weights: "linear", level, resamples, seed })
      : null,
  };
}

function pairOf(row: readonly (number | null)[], [a, b]: ColumnPair): readonly (number | null)[] {
  return [row[a]!, row[b]!];
}
