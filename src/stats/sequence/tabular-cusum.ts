import { requireNumbers, requireOptions } from "../guards.js";
import { requireLimit } from "./require-risks.js";

export interface TabularCusum {
  readonly method: "tabular cumulative sum";
  readonly target: number;
  readonly allowance: number;
  readonly limit: number;
  /** One a value: how far it has drifted above and below the target, each never below 0. */
  readonly steps: readonly { readonly value: number; readonly above: number; readonly below: number }[];
  /** 1-based numbers of the values at which either sum passed the limit. */
  readonly signals: readonly number[];
}

/**
 * Two-sided tabular cumulative sum of a measurement in the order of the cases.
 *
 * @param values finite numbers, in order
 * @param options.target what the measurement should be
 * @param options.allowance drift that is let pass at each value, zero or more (often half the shift to be detected)
 * @param options.limit above which a sum signals
 * @throws RangeError when a value or option is out of range
 * @see Page 1954, Biometrika 41:100-115; Montgomery, Introduction to Statistical Quality Control, chapter on the
 *   cumulative sum
 * @example tabularCusum([11, 12], { target: 10, allowance: 0.5, limit: 5 }).steps[1].above // => 2
 */
export function tabularCusum(
  values: readonly number[],
  options: { readonly target: number; readonly allowance: number; readonly limit: number },
): TabularCusum {
  requireOptions("tabularCusum", options, ["target", "allowance", "limit"]);
  const { target, allowance, limit } = options;
  requireNumbers("tabularCusum", "values", values, 0);
  requireNumbers("tabularCusum", "target", [target], 1);
  if (!(allowance >= 0 && allowance < Infinity))
    throw new RangeError(`tabularCusum: allowance must be zero or more, got ${allowance}`);
  requireLimit("tabularCusum", limit);
  let [above, below] = [0, 0];
  const steps = values.map((value) => {
    above = Math.max(0, above + value - target - allowance);
    below = Math.max(0, below + target - value - allowance);
    return { value, above, below };
  });
  const signals = steps.flatMap((step, index) => (step.above > limit || step.below > limit ? [index + 1] : []));
  return { method: "tabular cumulative sum", target, allowance, limit, steps, signals };
}
