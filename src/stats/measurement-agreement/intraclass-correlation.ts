import { fQuantile } from "../../numeric/f.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { meanSquares, type MeanSquares } from "./mean-squares.js";

/** Which raters are meant: others for each radiograph, a sample of raters, or just these. */
export const iccModels = ["one-way random", "two-way random", "two-way mixed"] as const;
/** Whether a rater who reads higher throughout disagrees. */
export const iccTypes = ["absolute agreement", "consistency"] as const;
/** One rater's reading, or the mean of all of them. */
export const iccUnits = ["single", "average"] as const;
export type IccModel = (typeof iccModels)[number];
export type IccType = (typeof iccTypes)[number];
export type IccUnit = (typeof iccUnits)[number];

export interface IccOptions {
  readonly model: IccModel;
  /** One-way random knows only absolute agreement. */
  readonly type: IccType;
  readonly unit: IccUnit;
  /** Coverage in (0, 1); default 0.95. */
  readonly level?: number;
}

interface IccShared {
  readonly method: "intraclass correlation, F limits (Shrout and Fleiss 1979; McGraw and Wong 1996)";
  readonly model: IccModel;
  readonly type: IccType;
  readonly unit: IccUnit;
  readonly level: number;
}

export interface IccEstimate extends IccShared {
  readonly images: number;
  readonly raters: number;
  readonly incomplete: number;
  readonly estimate: number;
  readonly interval: Interval | NotEstimable;
}

export type IccResult = IccEstimate | (IccShared & NotEstimable);

/**
 * Intraclass correlation with its limits from F, on the radiographs that every rater measured.
 *
 * Model, type and unit must be named: none is the right one for every study. Random and mixed two-way models share the
 * arithmetic and differ in what is claimed: other raters too, or these raters only.
 *
 * @param readings measurements, one row a radiograph, one column a rater, null where not read
 * @throws RangeError when readings or level are out of range; TypeError for unknown options or consistency of one-way readings
 * @returns the estimate, or why there is none: fewer than two complete radiographs, or all readings alike
 * @see McGraw and Wong 1996, Psychol Methods 1:30-46, Tables 4 and 7; Shrout and Fleiss 1979, Psychol Bull 86:420-428
 * @example intraclassCorrelation([[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]], { model: "two-way random", type: "absolute agreement", unit: "single" }).estimate // => 0.289763779527559
 */
export function intraclassCorrelation(
  readings: readonly (readonly (number | null)[])[],
  options: IccOptions,
): IccResult {
  const { model, type, unit, level } = checked(options);
  const squares = meanSquares("intraclassCorrelation", readings);
  const method = "intraclass correlation, F limits (Shrout and Fleiss 1979; McGraw and Wong 1996)";
  const shared = { method, model, type, unit, level } as const;
  if (squares === null)
    return { ...shared, estimate: null, because: "fewer than two radiographs were measured by every rater" };
  if (squares.betweenImages === 0 && squares.withinImages === 0)
    return {
      ...shared,
      estimate: null,
      because: "all readings are the same, so radiographs and raters cannot be told apart",
    };
  const single =
    model === "one-way random"
      ? oneWay(squares, level)
      : type === "consistency"
        ? consistency(squares, level)
        : agreement(squares, level);
  const { images, raters, incomplete } = squares;
  const counts = { images, raters, incomplete };
  if (unit === "single") return { ...shared, ...counts, ...single };
  const average = (value: number): number => (raters * value) / (1 + (raters - 1) * value);
  // The mean of the readings of all raters: the same step for the estimate and both limits.
  if (!("low" in single.interval))
    return { ...shared, ...counts, estimate: average(single.estimate), interval: single.interval };
  const interval = { low: average(single.interval.low), high: average(single.interval.high) };
  return { ...shared, ...counts, estimate: average(single.estimate), interval };
}

interface Single {
  readonly estimate: number;
  readonly interval: Interval | NotEstimable;
}

const perfect: NotEstimable = {
  estimate: null,
  because: "the raters never differed, so there is no error to build limits from",
};

function oneWay({ images, raters, betweenImages, withinImages }: MeanSquares, level: number): Single {
  const estimate = (betweenImages - withinImages) / (betweenImages + (raters - 1) * withinImages);
  if (withinImages === 0) return { estimate, interval: perfect };
  const ratio = betweenImages / withinImages;
  return { estimate, interval: fLimits(ratio, raters, [images - 1, images * (raters - 1)], level) };
}

function consistency({ images, raters, betweenImages, residual }: MeanSquares, level: number): Single {
  const estimate = (betweenImages - residual) / (betweenImages + (raters - 1) * residual);
  if (residual === 0) return { estimate, interval: perfect };
  const ratio = betweenImages / residual;
  return { estimate, interval: fLimits(ratio, raters, [images - 1, (images - 1) * (raters - 1)], level) };
}

function fLimits(ratio: number, raters: number, [above, below]: readonly [number, number], level: number): Interval {
  const p = (1 + level) / 2;
  const low = ratio / fQuantile(p, { df1: above, df2: below });
  const high = ratio * fQuantile(p, { df1: below, df2: above });
  return { low: (low - 1) / (low + raters - 1), high: (high - 1) / (high + raters - 1) };
}

function agreement(squares: MeanSquares, level: number): Single {
  const { images: n, raters: k, betweenImages: between, betweenRaters, residual } = squares;
  const estimate = (between - residual) / (between + (k - 1) * residual + (k / n) * (betweenRaters - residual));
  if (betweenRaters === 0 && residual === 0) return { estimate, interval: perfect };
  // Satterthwaite's degrees of freedom for the mix of rater and residual mean squares (McGraw and Wong 1996, Table 7).
  const a = (k * estimate) / (n * (1 - estimate));
  const b = 1 + (k * estimate * (n - 1)) / (n * (1 - estimate));
  const df =
    (a * betweenRaters + b * residual) ** 2 /
    ((a * betweenRaters) ** 2 / (k - 1) + (b * residual) ** 2 / ((n - 1) * (k - 1)));
  const p = (1 + level) / 2;
  const lower = fQuantile(p, { df1: n - 1, df2: df });
  const upper = fQuantile(p, { df1: df, df2: n - 1 });
  const rest = k * betweenRaters + (k * n - k - n) * residual;
  return {
    estimate,
    interval: {
      low: (n * (between - lower * residual)) / (lower * rest + n * between),
      high: (n * (upper * between - residual)) / (rest + n * upper * between),
    },
  };
}

function checked(options: IccOptions): Required<IccOptions> {
  requireOptions("intraclassCorrelation", options, ["model", "type", "unit", "level"]);
  const { model, type, unit, level = 0.95 } = options;
  requireLevel("intraclassCorrelation", level);
  requireOneOf("model", model, iccModels);
  requireOneOf("type", type, iccTypes);
  requireOneOf("unit", unit, iccUnits);
  if (model === "one-way random" && type === "consistency")
    throw new TypeError("intraclassCorrelation: one-way random knows only absolute agreement, got consistency");
  return { model, type, unit, level };
}

function requireOneOf(name: string, value: string, known: readonly string[]): void {
  if (!known.includes(value))
    throw new TypeError(`intraclassCorrelation: ${name} must be one of ${known.join(", ")}, got "${value}"`);
}
