import type { Count, NotEstimable } from "../types.js";
import { poolLogisticNormal, type PooledProportion } from "./pool-logistic-normal.js";

export interface LeaveOneOut {
  readonly method: "leave one series out";
  readonly all: PooledProportion | NotEstimable;
  /** One a series, in order: what the others give. */
  readonly without: readonly { readonly left: number; readonly pooled: PooledProportion | NotEstimable }[];
}

/**
 * The pooled proportion with each series left out in turn: does one series carry the result?
 *
 * @param series successes of trials
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Borenstein et al. 2009, Introduction to Meta-Analysis, chapter 42 (sensitivity to single studies)
 * @example leaveOneOut([{ successes: 3, trials: 5 }]).without[0].pooled.because // => "there is no series"
 */
export function leaveOneOut(series: readonly Count[], options: { readonly level?: number } = {}): LeaveOneOut {
  return {
    method: "leave one series out",
    all: poolLogisticNormal(series, options),
    without: series.map((_, left) => ({
      left,
      pooled: poolLogisticNormal(
        series.filter((_unused, at) => at !== left),
        options,
      ),
    })),
  };
}
