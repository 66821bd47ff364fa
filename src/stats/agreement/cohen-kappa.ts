import { normalQuantile, normalUpper } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { disagreementWeights, type AgreementWeights } from "./disagreement-weights.js";
import { kappaMoments } from "./kappa-moments.js";
import { tableMargins, type SquareTable } from "./square-table.js";

export interface KappaOptions {
  /** Default "unweighted". */
  readonly weights?: AgreementWeights;
  /** Coverage in (0, 1); default 0.95. */
  readonly level?: number;
}

interface KappaShared {
  readonly method: "kappa, large-sample standard error (Fleiss, Cohen and Everitt 1969)";
  readonly weights: AgreementWeights;
  readonly level: number;
  /** Radiographs in the table. */
  readonly n: number;
}

export interface KappaEstimate extends KappaShared {
  readonly estimate: number;
  /** For the interval: holds whatever kappa is. */
  readonly standardError: number;
  /** For the test that kappa is 0 only. */
  readonly nullStandardError: number;
  /** Not cut to the possible range. */
  readonly interval: Interval;
  /** (Weighted) observed and chance agreement. */
  readonly observed: number;
  readonly chance: number;
  /** Two-sided, of kappa 0; a reason instead where a rater used one grade only. */
  readonly test: { readonly z: number; readonly p: number } | NotEstimable;
}

export type KappaResult = KappaEstimate | (KappaShared & NotEstimable);

/**
 * Kappa of two raters, unweighted (Cohen 1960) or weighted (Cohen 1968), with its large-sample interval.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @param options.weights "unweighted" (default), "linear", "quadratic" or disagreement weights
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the estimate, or why there is none: chance agreement is 1 when both raters used one and the same grade
 * @throws RangeError when the table, the weights or the level are out of range; TypeError for unknown options
 * @see Cohen 1960, Educ Psychol Meas 20:37-46; Fleiss, Cohen and Everitt 1969, Psychol Bull 72:323-327
 * @example cohenKappa([[88, 14, 18], [10, 40, 10], [2, 6, 12]]).estimate // => 0.491525423728814
 */
export function cohenKappa(table: SquareTable, options: KappaOptions = {}): KappaResult {
  requireOptions("cohenKappa", options, ["weights", "level"]);
  const { weights = "unweighted", level = 0.95 } = options;
  requireLevel("cohenKappa", level);
  const margins = tableMargins("cohenKappa", table);
  const disagreement = disagreementWeights("cohenKappa", table.length, weights);
  const shared = {
    method: "kappa, large-sample standard error (Fleiss, Cohen and Everitt 1969)",
    weights,
    level,
    n: margins.n,
  } as const;
  const moments = kappaMoments(table, margins, disagreement);
  if (moments === null)
    return {
      ...shared,
      estimate: null,
      because: "chance agreement is 1: both raters used only one and the same grade",
    };
  const half = normalQuantile((1 + level) / 2) * moments.standardError;
  const interval = { low: moments.estimate - half, high: moments.estimate + half };
  return { ...shared, ...moments, interval, test: testOfZero(moments.estimate, moments.nullStandardError) };
}

function testOfZero(estimate: number, nullStandardError: number): KappaEstimate["test"] {
  if (nullStandardError === 0)
    return { estimate: null, because: "one rater used a single grade, so kappa is always 0" };
  const z = estimate / nullStandardError;
  return { z, p: 2 * normalUpper(Math.abs(z)) };
}
