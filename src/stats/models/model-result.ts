import { chiSquareUpper, chiSquareUpperQuantile } from "../../numeric/chi-square.js";
import { normalCdf, normalUpperQuantile } from "../../numeric/normal.js";
import type { Interval, NotEstimable } from "../types.js";
import { logisticLikelihood, type Likelihood } from "./likelihood.js";
import type { Design } from "./logistic-data.js";
import { maximise, type Maximum } from "./maximise.js";
import { orthonormal, withLast } from "./orthonormal.js";
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
 * The fit of a logistic model with limits and tests, or null naming the fit that did not converge: no number comes from
 * one that did not. Each coefficient is worked on in orthonormal columns turned so that it is the last parameter.
 */
export function modelResult(
  design: Design,
  options: { readonly penalised: boolean; readonly level: number },
): ModelFit | NotEstimable {
  const { penalised, level } = options;
  const { columns, names } = design;
  const main = orthonormal(design);
  const likelihood = logisticLikelihood(main.design, { penalised });
  const top = maximise(likelihood, { start: new Float64Array(columns) });
  if (top === null) return notConverged("the fit");
  const coefficients: Coefficient[] = [];
  for (let j = 0; j < columns; j++) {
    const own = withLast(main, main.readings[j]!);
    const ownLikelihood = logisticLikelihood(own.design, { penalised });
    const ownTop = maximise(ownLikelihood, { start: own.reflect(top.beta) });
    if (ownTop === null) return notConverged(`the fit for "${names[j]!}"`);
    const coefficient = coefficientOf(ownLikelihood, ownTop, { name: names[j]!, scale: own.scale, level });
    if ("because" in coefficient) return coefficient;
    coefficients.push(coefficient);
  }
  // The constant is the first of the main columns: without covariates the others are 0.
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
    logLikelihood: top.at.value + (penalised ? main.logVolume : 0),
    coefficients,
    covariance: main.readings.map((one) => main.readings.map((other) => covariance(top, one, other))),
    likelihoodRatio: together,
  };
}

function notConverged(what: string): NotEstimable {
  return { estimate: null, because: `${what} did not converge` };
}

/** The coefficient of the last column. */
function coefficientOf(
  likelihood: Likelihood,
  top: Maximum,
  of: { readonly name: string; readonly scale: number; readonly level: number },
): Coefficient | NotEstimable {
  const { name, scale, level } = of;
  const parameter = likelihood.size - 1;
  const drop = chiSquareUpperQuantile(1 - level, 1) / 2;
  const low = profileLimit(likelihood, top, { parameter, side: -1, drop });
  const high = profileLimit(likelihood, top, { parameter, side: 1, drop });
  if (low === null || high === null) return notConverged(`the profile of "${name}"`);
  const likelihoodRatio = testOf(likelihood, top, [parameter]);
  if (likelihoodRatio === null) return notConverged(`the fit without "${name}"`);

  const estimate = top.beta[parameter]! / scale;
  const standardError = Math.sqrt(top.at.inverse.at(-1)!) / scale;
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

/** Of two coefficients, by what they take of the parameters. */
function covariance({ at, beta }: Maximum, one: Float64Array, other: Float64Array): number {
  const size = beta.length;
  let sum = 0;
  for (let i = 0; i < size; i++) for (let k = 0; k < size; k++) sum += one[i]! * at.inverse[i * size + k]! * other[k]!;
  return sum;
}
