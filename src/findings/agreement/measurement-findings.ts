import type { Readings, ReadingColumn } from "../../cases/readings/types.js";
import { allPairs } from "../../stats/agreement/all-pairs.js";
import { krippendorffAlpha, type AlphaResult } from "../../stats/agreement/krippendorff-alpha.js";
import type { ColumnPair } from "../../stats/agreement/pairs-coefficient.js";
import { blandAltman, type BlandAltman } from "../../stats/measurement-agreement/bland-altman.js";
import {
  intraclassCorrelation,
  type IccModel,
  type IccResult,
  type IccType,
  type IccUnit,
} from "../../stats/measurement-agreement/intraclass-correlation.js";
import { measurementError, type MeasurementError } from "../../stats/measurement-agreement/measurement-error.js";
import { proportionalBias, type ProportionalBias } from "../../stats/measurement-agreement/proportional-bias.js";
import { withinSubjectSd, type WithinSubjectSd } from "../../stats/measurement-agreement/within-subject-sd.js";
import type { NotEstimable } from "../../stats/types.js";
import { firstOccasions } from "./first-occasions.js";

export interface MeasuredPair {
  readonly raters: ColumnPair;
  readonly limits: BlandAltman | NotEstimable;
  readonly proportional: ProportionalBias | NotEstimable;
}

/** Everything that measurements of two or more columns tell. */
export interface MeasurementFindings {
  readonly kind: "measurements";
  readonly images: number;
  readonly level: number;
  readonly pairs: readonly MeasuredPair[];
  /** Two-way, single reading. */
  readonly icc: { readonly agreement: IccResult; readonly consistency: IccResult };
  /** Every other way to name it. */
  readonly otherIcc: readonly IccResult[];
  readonly error: {
    readonly agreement: MeasurementError | NotEstimable;
    readonly consistency: MeasurementError | NotEstimable;
  };
  /** Repeats by the same rater only; null when nobody read twice. */
  readonly repeats: WithinSubjectSd | NotEstimable | null;
  readonly alpha: AlphaResult;
}

/** Bias and limits of each pair, error of measurement and correlations, from readings in numbers. */
export function measurementFindings(given: Readings, { level }: { readonly level: number }): MeasurementFindings {
  const values =
    given.kind === "measurements"
      ? given.readings
      : given.readings.map((row) => row.map((grade) => (grade === null ? null : given.numbers![grade]!)));
  const pooled = firstOccasions(given.columns);
  const raters = pooled.length > 1 ? values.map((row) => pooled.map((place) => row[place]!)) : values;
  const column = (place: number) => values.map((row) => row[place]!);
  const icc = (model: IccModel, type: IccType, unit: IccUnit = "single"): IccResult =>
    intraclassCorrelation(raters, { model, type, unit, level });
  return {
    kind: "measurements",
    images: given.radiographs.length,
    level,
    pairs: allPairs(given.columns.length).map(([a, b]) => ({
      raters: [a, b],
      limits: blandAltman(column(a), column(b), { level }),
      proportional: proportionalBias(column(a), column(b), { level }),
    })),
    icc: {
      agreement: icc("two-way random", "absolute agreement"),
      consistency: icc("two-way mixed", "consistency"),
    },
    otherIcc: [
      icc("one-way random", "absolute agreement"),
      icc("one-way random", "absolute agreement", "average"),
      icc("two-way random", "absolute agreement", "average"),
      icc("two-way mixed", "consistency", "average"),
    ],
    error: {
      agreement: measurementError(raters, { type: "agreement", level }),
      consistency: measurementError(raters, { type: "consistency", level }),
    },
    repeats: repeatsOf(values, given.columns, level),
    alpha: krippendorffAlpha(raters, { metric: "interval" }),
  };
}

/** Each rater's own repeats of a radiograph are one group: systematic differences between raters stay out. */
function repeatsOf(
  values: readonly (readonly (number | null)[])[],
  columns: readonly ReadingColumn[],
  level: number,
): WithinSubjectSd | NotEstimable | null {
  const raters = [...new Set(columns.map((column) => column.rater))];
  const groups = raters
    .map((rater) => columns.flatMap((column, place) => (column.rater === rater ? [place] : [])))
    .filter((places) => places.length > 1);
  if (groups.length === 0) return null;
  return withinSubjectSd(
    values.flatMap((row) => groups.map((places) => places.map((place) => row[place]!))),
    { level },
  );
}
