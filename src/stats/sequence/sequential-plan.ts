import { requireOptions } from "../guards.js";
import { requireRisks } from "./require-risks.js";

export interface SequentialPlan {
  readonly method: "sequential probability ratio test, item by item";
  readonly acceptable: number;
  readonly unacceptable: number;
  /** Chance of calling an acceptable rate unacceptable. */
  readonly alpha: number;
  /** Chance of calling an unacceptable rate acceptable. */
  readonly beta: number;
  /** Log odds ratio of the two rates. */
  readonly logOddsRatio: number;
  /** Failures allowed for each further case: the slope of both lines. */
  readonly slope: number;
  /** After n cases: acceptable when failures are at or below slope * n - acceptIntercept. */
  readonly acceptIntercept: number;
  /** After n cases: unacceptable when failures are at or above slope * n + rejectIntercept. */
  readonly rejectIntercept: number;
}

/**
 * Item-by-item sequential plan for a failure rate: two parallel lines in the plane of cases and failures.
 *
 * @param rates.acceptable failure rate that should pass, above 0
 * @param rates.unacceptable failure rate that should not, above the acceptable one, below 1
 * @param options.alpha in (0, 1); default 0.1
 * @param options.beta in (0, 1); default 0.1; alpha and beta must add to less than 1
 * @throws RangeError when a rate or an error is out of range
 * @see Wald 1947, Sequential Analysis, section 5.3
 * @example sequentialPlan({ acceptable: 0.1, unacceptable: 0.2 }).slope // => 0.145244354324273
 */
export function sequentialPlan(
  rates: { readonly acceptable: number; readonly unacceptable: number },
  options: { readonly alpha?: number; readonly beta?: number } = {},
): SequentialPlan {
  requireOptions("sequentialPlan", options, ["alpha", "beta"]);
  const { alpha = 0.1, beta = 0.1 } = options;
  const { acceptable, unacceptable } = rates;
  requireRisks("sequentialPlan", [acceptable, unacceptable]);
  if (!(unacceptable > acceptable))
    throw new RangeError(`sequentialPlan: unacceptable must be above acceptable (${acceptable}), got ${unacceptable}`);
  if (!(alpha > 0 && beta > 0 && alpha + beta < 1))
    throw new RangeError(
      `sequentialPlan: alpha and beta must be positive and add to less than 1, got ${alpha} and ${beta}`,
    );
  const failure = Math.log(unacceptable / acceptable);
  const success = Math.log1p(-acceptable) - Math.log1p(-unacceptable);
  const logOddsRatio = failure + success;
  return {
    method: "sequential probability ratio test, item by item",
    acceptable,
    unacceptable,
    alpha,
    beta,
    logOddsRatio,
    slope: success / logOddsRatio,
    acceptIntercept: Math.log((1 - alpha) / beta) / logOddsRatio,
    rejectIntercept: Math.log((1 - beta) / alpha) / logOddsRatio,
  };
}
