import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval } from "../types.js";
import { betweenSeriesVariance, varianceMethods } from "./between-series-variance.js";
import { requireEffects, weighted, type Effect } from "./effects.js";
import { heterogeneity, type Heterogeneity } from "./heterogeneity.js";
import { predictionInterval } from "./prediction-interval.js";

export const poolingMethods = ["fixed effect", ...varianceMethods] as const;
export type PoolingMethod = (typeof poolingMethods)[number];

export interface PooledEffects {
  readonly method: "inverse variance";
  /** How the variance between series was estimated; "fixed effect" takes it as 0. */
  readonly between: PoolingMethod;
  readonly series: number;
  readonly level: number;
  readonly estimate: number;
  readonly standardError: number;
  /** Wald limits. */
  readonly interval: Interval;
  readonly tau: number;
  readonly tauSquared: number;
  readonly heterogeneity: Heterogeneity;
  /** For the true value of a new series; null for fewer than three series and under a fixed effect. */
  readonly prediction: Interval | null;
  /** Share of the weight, series by series. */
  readonly weights: readonly number[];
}

/**
 * Mean of the estimates of several series weighted by the inverse of their variance, so that printed results can be
 * recognised. For proportions of small series prefer `poolLogisticNormal`, which works on the counts.
 *
 * @param effects one or more
 * @param options.between "fixed effect" or one of the estimators of the variance between series
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when an effect or the level is not valid; TypeError on an unknown method
 * @see Borenstein et al. 2009, Introduction to Meta-Analysis, chapters 11 to 17; DerSimonian and Laird 1986
 * @example poolEffects([{ estimate: 1, variance: 1 }, { estimate: 3, variance: 1 }], { between: "fixed effect" }).estimate // => 2
 */
export function poolEffects(
  effects: readonly Effect[],
  options: { readonly between: PoolingMethod; readonly level?: number },
): PooledEffects {
  requireOptions("poolEffects", options, ["between", "level"]);
  const { between, level = 0.95 } = options;
  requireLevel("poolEffects", level);
  if (!poolingMethods.includes(between))
    throw new TypeError(`poolEffects: between must be one of ${poolingMethods.join(", ")}, got ${String(between)}`);
  requireEffects("poolEffects", effects);
  const tauSquared = between === "fixed effect" ? 0 : betweenSeriesVariance(effects, { method: between });
  const weight = ({ variance }: Effect): number => 1 / (variance + tauSquared);
  const { mean: estimate, sum } = weighted(effects, weight);
  const standardError = 1 / Math.sqrt(sum);
  const half = normalUpperQuantile((1 - level) / 2) * standardError;
  const tau = Math.sqrt(tauSquared);
  const series = effects.length;
  return {
    method: "inverse variance",
    between,
    series,
    level,
    estimate,
    standardError,
    interval: { low: estimate - half, high: estimate + half },
    tau,
    tauSquared,
    heterogeneity: heterogeneity(effects),
    prediction: between === "fixed effect" ? null : predictionInterval({ estimate, standardError, tau, series, level }),
    weights: effects.map((effect) => weight(effect) / sum),
  };
}
