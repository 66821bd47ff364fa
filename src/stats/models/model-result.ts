import { chiSquareUpper, chiSquareUpperQuantile } from "../../numeric/chi-square.js";
import { normalCdf, normalUpperQuantile } from "../../numeric/normal.js";
import type { Interval, NotEstimable } from "../types.js";
import type { Likelihood } from "./likelihood.js";
import type { Design } from "./logistic-data.js";
import { maximise, type Maximum } from "./maximise.js";
import { profileLimit } from "./profile-limit.js";

export interface Test {
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
}

/** One column of a fitted model, on the scale of the log odds of success per unit of the covariate. */
export interface Coefficient {
  readonly name: string;
  readonly estimate: number;
  readonly standardError: number;
  /** Profile-likelihood limits. */
  readonly interval: Interval;
  readonly wald: { readonly z: number; readonly p: number; readonly interval: Interval };
  /** Likelihood-ratio test that the coefficient is 0. */
  readonly likelihoodRatio: Test;
  /** The estimate and its profile limits as odds ratio. */
  readonly oddsRatio: { readonly estimate: number; readonly interval: Interval };
}

export interface ModelFit {
  readonly level: number;
  readonly cases: number;
  readonly successes: number;
  readonly logLikelihood: number;
  readonly coefficients: readonly Coefficient[];
  /** Row by row, in the order of the coefficients. */
  readonly covariance: readonly (readonly number[])[];
  /** All covariates together against none; df 0 when there are none. */
  readonly likelihoodRatio: Test;
}

/**
 * The fit of a likelihood with limits and tests, or null naming the fit that did not converge: no number comes from one
 * that did not.
 */
export function modelResult(design: Design, likelihood: Likelihood, level: number): ModelFit | NotEstimable {
  const { columns, names, scales } = design;
  const top = maximise(likelihood, { start: new Float64Array(columns) });
  if (top === null) return notConverged("the fit");
  const coefficients: Coefficient[] = [];
  for (let j = 0; j < columns; j++) {
    const coefficient = coefficientOf(design, likelihood, { top, parameter: j, level });
    if ("because" in coefficient) return coefficient;
    coefficients.push(coefficient);
  }
  const together = testOf(
    likelihood,
    top,
    Array.from({ length: columns - 1 }, (_, j) => j + 1),
  );
  if (together === null) return notConverged("the fit without covariates");
  return {
    level,
    cases: design.cases,
    successes: design.events,
    logLikelihood: top.at.value + logScaleOf(design, likelihood),
    coefficients,
    covariance: names.map((_, i) => names.map((_, j) => top.at.inverse[i * columns + j]! / (scales[i]! * scales[j]!))),
    likelihoodRatio: together,
  };
}

function notConverged(what: string): NotEstimable {
  return { estimate: null, because: `${what} did not converge` };
}

function coefficientOf(
  { names, scales, columns }: Design,
  likelihood: Likelihood,
  of: { readonly top: Maximum; readonly parameter: number; readonly level: number },
): Coefficient | NotEstimable {
  const { top, parameter, level } = of;
  const [name, scale] = [names[parameter]!, scales[parameter]!];
  const drop = chiSquareUpperQuantile(1 - level, 1) / 2;
  const low = profileLimit(likelihood, top, { parameter, side: -1, drop });
  const high = profileLimit(likelihood, top, { parameter, side: 1, drop });
  if (low === null || high === null) return notConverged(`the profile of "${name}"`);
  const likelihoodRatio = testOf(likelihood, top, [parameter]);
  if (likelihoodRatio === null) return notConverged(`the fit without "${name}"`);

  const estimate = top.beta[parameter]! / scale;
  const standardError = Math.sqrt(top.at.inverse[parameter * columns + parameter]!) / scale;
  const half = normalUpperQuantile((1 - level) / 2) * standardError;
  const interval = { low: low / scale, high: high / scale };
  const z = estimate / standardError;
  return {
    name,
    estimate,
    standardError,
    interval,
    wald: { z, p: 2 * normalCdf(-Math.abs(z)), interval: { low: estimate - half, high: estimate + half } },
    likelihoodRatio,
    oddsRatio: {
      estimate: Math.exp(estimate),
      interval: { low: Math.exp(interval.low), high: Math.exp(interval.high) },
    },
  };
}

/** Against the fit in which the given parameters are 0, the penalty (if any) still that of all columns. */
function testOf(likelihood: Likelihood, top: Maximum, zero: readonly number[]): Test | null {
  if (zero.length === 0) return { statistic: 0, df: 0, p: 1 };
  const start =
    zero.length === 1 ? conditional(top, zero[0]!) : top.beta.map((value, j) => (zero.includes(j) ? 0 : value));
  const without =
    maximise(likelihood, { start, held: zero }) ??
    maximise(likelihood, { start: new Float64Array(likelihood.size), held: zero });
  if (without === null) return null;
  const statistic = Math.max(0, 2 * (top.at.value - without.at.value));
  return { statistic, df: zero.length, p: chiSquareUpper(statistic, zero.length) };
}

/** Where a quadratic likelihood would be highest with one parameter at 0. */
function conditional({ beta, at }: Maximum, zero: number): Float64Array {
  const size = beta.length;
  const share = beta[zero]! / at.inverse[zero * size + zero]!;
  return beta.map((value, j) => (j === zero ? 0 : value - share * at.inverse[j * size + zero]!));
}

/** A penalty is taken on scaled columns: back on the columns as given it differs by the logarithms of the scales. */
function logScaleOf({ scales }: Design, { penalised }: Likelihood): number {
  return penalised ? scales.reduce((sum, scale) => sum + Math.log(scale), 0) : 0;
}
