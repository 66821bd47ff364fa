import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { requireEffects, weighted, type Effect } from "./effects.js";
import { restrictedVariance } from "./restricted-variance.js";

export const varianceMethods = ["DerSimonian-Laird", "Paule-Mandel", "REML", "Cochran", "two-step Cochran"] as const;
export type VarianceMethod = (typeof varianceMethods)[number];

/**
 * Variance between series, tau squared, never below 0.
 *
 * @param effects two or more (one gives 0)
 * @param options.method "DerSimonian-Laird", "Paule-Mandel", "REML", "Cochran" (unweighted analysis of variance) or
 *   "two-step Cochran" (one more step of moments from it)
 * @throws RangeError when an effect is not valid; TypeError on an unknown method
 * @see DerSimonian and Laird 1986, Control Clin Trials 7:177-188; Paule and Mandel 1982, J Res NBS 87:377-385; DerSimonian
 *   and Kacker 2007, Contemp Clin Trials 28:105-114; Viechtbauer 2005, J Educ Behav Stat 30:261-293 (REML)
 * @example betweenSeriesVariance([{ estimate: 0, variance: 1 }, { estimate: 4, variance: 1 }], { method: "DerSimonian-Laird" }) // => 7
 */
export function betweenSeriesVariance(
  effects: readonly Effect[],
  options: { readonly method: VarianceMethod },
): number {
  const { method } = options;
  if (!varianceMethods.includes(method))
    throw new TypeError(
      `betweenSeriesVariance: method must be one of ${varianceMethods.join(", ")}, got ${String(method)}`,
    );
  requireEffects("betweenSeriesVariance", effects);
  if (effects.length === 1) return 0;
  if (method === "DerSimonian-Laird") return byMoments(effects, ({ variance }) => 1 / variance);
  if (method === "Paule-Mandel") return pauleMandel(effects);
  if (method === "REML") return restrictedVariance(effects);
  const cochran = byMoments(effects, () => 1);
  if (method === "Cochran") return cochran;
  return byMoments(effects, ({ variance }) => 1 / (variance + cochran));
}

/** The value at which the weighted sum of squares has its expectation: DerSimonian and Kacker 2007, equation 6. */
function byMoments(effects: readonly Effect[], weight: (effect: Effect) => number): number {
  const { sum, q } = weighted(effects, weight);
  let [first, squares, second] = [0, 0, 0];
  for (const effect of effects) {
    first += weight(effect) * effect.variance;
    squares += weight(effect) ** 2;
    second += weight(effect) ** 2 * effect.variance;
  }
  return Math.max(0, (q - (first - second / sum)) / (sum - squares / sum));
}

/** The value at which the weighted sum of squares is its degrees of freedom. */
function pauleMandel(effects: readonly Effect[]): number {
  const excess = (tau2: number): number =>
    weighted(effects, ({ variance }) => 1 / (variance + tau2)).q - (effects.length - 1);
  if (excess(0) <= 0) return 0;
  let high = 1;
  while (excess(high) > 0) high *= 2;
  return bracketedRoot(excess, { low: 0, high });
}
