import { requireCount } from "../guards.js";
import type { Count } from "../types.js";
import type { Effect } from "./effects.js";

/** Log odds of success of one series; `corrected` where one half was added to both outcomes. */
export interface LogitEffect extends Effect {
  readonly corrected: boolean;
}

/**
 * Log odds of success with their variance, series by series. A series without failures or without successes has no
 * finite log odds: one half is added to both its outcomes, and only there. A model of the counts needs no such help: see
 * `poolLogisticNormal`.
 *
 * @param series successes of trials
 * @throws RangeError when a count is out of range
 * @see Haldane 1956, Ann Hum Genet 20:309-311 (the half); Woolf 1955, Ann Hum Genet 19:251-253 (the variance)
 * @example logitEffects([{ successes: 5, trials: 10 }]) // => [{ estimate: 0, variance: 0.4, corrected: false }]
 */
export function logitEffects(series: readonly Count[]): readonly LogitEffect[] {
  return series.map(({ successes, trials }, at) => {
    requireCount("logitEffects", successes, trials, `series[${at}]`);
    const corrected = successes === 0 || successes === trials;
    const add = corrected ? 0.5 : 0;
    const [won, lost] = [successes + add, trials - successes + add];
    return { estimate: Math.log(won / lost), variance: 1 / won + 1 / lost, corrected };
  });
}
