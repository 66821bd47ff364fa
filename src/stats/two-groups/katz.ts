import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { requireTwoGroups, type NoInterval, type TwoGroups } from "./groups.js";
import { ratioOfProportions } from "./ratio-of-proportions.js";

/** Ratio of two independent proportions, first over second, with limits on the logarithmic scale. */
export type KatzResult = TwoGroups & {
  readonly method: "katz";
  readonly level: number;
  readonly interval: Interval | NoInterval;
} & ({ readonly estimate: number } | NotEstimable);

/**
 * Risk ratio with Katz's logarithmic limits, which are not defined when a group had no success.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Katz, Baptista, Azen, Pike 1978, Biometrics 34:469-474, method C
 * @example katz({ first: { successes: 7, trials: 34 }, second: { successes: 1, trials: 34 } }).interval // => { low: 0.9096055, high: 53.8695 }
 */
export function katz({ first, second }: TwoGroups, options: { readonly level?: number } = {}): KatzResult {
  requireTwoGroups("katz", { first, second });
  requireOptions("katz", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("katz", level);
  const asked = { method: "katz", first, second, level, ...ratioOfProportions({ first, second }) } as const;
  if (first.successes === 0 || second.successes === 0) {
    const because = "a group had no success, so the standard error of the log risk ratio is not defined";
    return { ...asked, interval: { low: null, high: null, because } };
  }
  const failureShare = ({ successes, trials }: typeof first) => (trials - successes) / (successes * trials);
  const half = normalUpperQuantile((1 - level) / 2) * Math.sqrt(failureShare(first) + failureShare(second));
  const ratio = asked.estimate!;
  return { ...asked, interval: { low: ratio * Math.exp(-half), high: ratio * Math.exp(half) } };
}
