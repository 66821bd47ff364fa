import { requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { alphaCoefficient, alphaMetrics, type AlphaMetric } from "./alpha-coefficient.js";
import { requireReadings } from "./grade-readings.js";

interface AlphaShared {
  readonly method: "Krippendorff's alpha";
  readonly metric: AlphaMetric;
  /** Radiographs with two readings or more: all that alpha uses. */
  readonly images: number;
  /** Readings of those radiographs. */
  readonly readings: number;
}

export type AlphaResult = AlphaShared & ({ readonly estimate: number } | NotEstimable);

/**
 * Krippendorff's alpha: agreement of any number of raters with any gaps, 1 less disagreement found over that by chance.
 *
 * @param readings values, one row a radiograph, one column a rater, null where not read
 * @param options.metric "nominal", "ordinal", "interval" or "ratio" (values then at least 0)
 * @returns the estimate, or why there is none: no radiograph read twice, or only one value used
 * @throws RangeError when readings are not a matrix of finite numbers; TypeError for an unknown metric or option
 * @see Krippendorff 2011, Computing Krippendorff's Alpha-Reliability, University of Pennsylvania
 * @example krippendorffAlpha([[0, 1], [1, 1], [0, 1], [0, 0], [0, 0], [0, 1], [0, 0], [0, 0], [1, 0], [0, 0]], { metric: "nominal" }).estimate // => 0.095238095
 */
export function krippendorffAlpha(
  readings: readonly (readonly (number | null)[])[],
  options: { readonly metric: AlphaMetric },
): AlphaResult {
  requireOptions("krippendorffAlpha", options, ["metric"]);
  const { metric } = options;
  if (!alphaMetrics.includes(metric))
    throw new TypeError(`krippendorffAlpha: metric must be one of ${alphaMetrics.join(", ")}, got "${String(metric)}"`);
  requireReadings("krippendorffAlpha", readings);
  const used = readings.filter((row) => row.filter((value) => value !== null).length >= 2);
  const values = used.flat().filter((value) => value !== null);
  if (metric === "ratio" && values.some((value) => value < 0))
    throw new RangeError("krippendorffAlpha: ratio values must be at least 0, got a negative one");
  const shared = { method: "Krippendorff's alpha", metric, images: used.length, readings: values.length } as const;
  if (used.length === 0) return { ...shared, estimate: null, because: "no radiograph has two readings" };
  const scale = [...new Set(values)].toSorted((a, b) => a - b);
  if (scale.length === 1) return { ...shared, estimate: null, because: "only one value was used" };
  if (metric === "interval") return { ...shared, estimate: intervalAlpha(used) };
  const places = new Map(scale.map((value, place) => [value, place]));
  const placed = used.map((row) => row.map((value) => (value === null ? null : places.get(value)!)));
  const { times, value } = alphaCoefficient(scale, placed, metric);
  return { ...shared, estimate: value(times) };
}

/** Squared distances by sums of squares about means, so that thousands of different measurements cost no pairs. */
function intervalAlpha(used: readonly (readonly (number | null)[])[]): number {
  const rows = used.map((row) => row.filter((value) => value !== null));
  const all = rows.flat();
  const within = rows.reduce((sum, row) => sum + (row.length / (row.length - 1)) * squaresAboutMean(row), 0);
  return 1 - ((all.length - 1) * within) / (all.length * squaresAboutMean(all));
}

function squaresAboutMean(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
