import { requireCount } from "../guards.js";
import type { Count, Interval, NotEstimable } from "../types.js";
import { heterogeneity, type Heterogeneity } from "./heterogeneity.js";
import { logitEffects } from "./logit-effects.js";
import { predictionInterval } from "./prediction-interval.js";
import { randomInterceptLogistic, type RandomInterceptLogistic } from "./random-intercept-logistic.js";

export interface PooledProportion {
  readonly method: RandomInterceptLogistic["method"];
  readonly level: number;
  readonly series: number;
  readonly successes: number;
  readonly trials: number;
  /** Proportion of the middle series: the mean log odds turned back. */
  readonly estimate: number;
  /** Profile-likelihood limits, turned back. */
  readonly interval: Interval;
  /** For the true proportion of a new series; null for fewer than three series. */
  readonly prediction: Interval | null;
  readonly logOdds: { readonly estimate: number; readonly standardError: number; readonly interval: Interval };
  /** Between series, on the log odds. */
  readonly tau: RandomInterceptLogistic["tau"];
  readonly noVariation: RandomInterceptLogistic["noVariation"];
  /** Q and I-squared of the log odds, one half added where a series has only one outcome. */
  readonly heterogeneity: Heterogeneity;
}

/**
 * Pooled proportion of several series by a one-step logistic-normal model of their counts.
 *
 * @param series successes of trials, two or more
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.nodes of the quadrature, 15 to 101; default 25
 * @returns the pooled proportion, or null with the reason: fewer than two series, all or no success, no convergence
 * @throws RangeError when a count or option is out of range
 * @see Stijnen, Hamza and Oezdemir 2010, Stat Med 29:3046-3067; Schwarzer et al. 2019, Res Synth Methods 10:476-483, on
 *   why not by the double arcsine
 * @example poolLogisticNormal([{ successes: 3, trials: 3 }]).because // => "variation between series needs at least 2 series, there is 1"
 */
export function poolLogisticNormal(
  series: readonly Count[],
  options: { readonly level?: number; readonly nodes?: number } = {},
): PooledProportion | NotEstimable {
  if (series.length === 0) return { estimate: null, because: "there is no series" };
  series.forEach(({ successes, trials }, at) => requireCount("poolLogisticNormal", successes, trials, `series[${at}]`));
  const successes = series.map((one) => one.successes);
  const trials = series.map((one) => one.trials);
  const fit = randomInterceptLogistic({ successes, trials, covariates: [] }, options);
  if ("estimate" in fit) return fit;
  const { estimate, standardError, interval } = fit.coefficients[0]!;
  const prediction = predictionInterval({
    estimate,
    standardError,
    tau: fit.tau.estimate,
    series: series.length,
    level: fit.level,
  });
  return {
    method: fit.method,
    level: fit.level,
    series: fit.series,
    successes: fit.successes,
    trials: fit.cases,
    estimate: share(estimate),
    interval: sharesOf(interval),
    prediction: prediction && sharesOf(prediction),
    logOdds: { estimate, standardError, interval },
    tau: fit.tau,
    noVariation: fit.noVariation,
    heterogeneity: heterogeneity(logitEffects(series)),
  };
}

const share = (logOdds: number): number =>
  logOdds < 0 ? Math.exp(logOdds) / (1 + Math.exp(logOdds)) : 1 / (1 + Math.exp(-logOdds));

const sharesOf = ({ low, high }: Interval): Interval => ({ low: share(low), high: share(high) });
