import { normalUpper } from "../../numeric/normal.js";
import type { NotEstimable } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";

/** A chi-square statistic with 1 degree of freedom and its p value. */
export interface ChiSquareTest {
  readonly statistic: number;
  readonly p: number;
}

/** Chi-square tests of two independent proportions: plain, with Yates's correction, and multiplied by (N - 1)/N. */
export type ChiSquareTwoGroupsResult = TwoGroups & { readonly method: "chiSquareTwoGroups" } & (
    { readonly pearson: ChiSquareTest; readonly yates: ChiSquareTest; readonly nMinus1: ChiSquareTest } | NotEstimable
  );

/**
 * Chi-square tests of a 2 x 2 table. Undefined when every case was a success or every one a failure.
 * @param groups successes of trials in each group
 * @throws RangeError when a count is out of range
 * @see Pearson 1900, Philos Mag 50:157-175; Yates 1934, Suppl J R Stat Soc 1:217-235 (the correction is never more than the
 *   deviation itself); Campbell 2007, Stat Med 26:3661-3675 (N - 1)
 * @example chiSquareTwoGroups({ first: { successes: 10, trials: 20 }, second: { successes: 5, trials: 20 } }).pearson // => { statistic: 2.6666667, p: 0.10247043 }
 */
export function chiSquareTwoGroups({ first, second }: TwoGroups): ChiSquareTwoGroupsResult {
  requireTwoGroups("chiSquareTwoGroups", { first, second });
  const asked = { method: "chiSquareTwoGroups", first, second } as const;
  const total = first.trials + second.trials;
  const successes = first.successes + second.successes;
  if (successes === 0 || successes === total)
    return { ...asked, estimate: null, because: `every case was a ${successes === 0 ? "failure" : "success"}` };
  const test = (deviation: number, cases: number): ChiSquareTest => {
    // By square roots, so that large tables do not overflow: z is the root of the statistic.
    const z =
      (deviation * Math.sqrt(cases)) /
      Math.sqrt(first.trials * second.trials) /
      Math.sqrt(successes * (total - successes));
    return { statistic: z ** 2, p: Math.min(1, 2 * normalUpper(z)) };
  };
  const deviation = Math.abs(
    first.successes * (second.trials - second.successes) - second.successes * (first.trials - first.successes),
  );
  return {
    ...asked,
    pearson: test(deviation, total),
    yates: test(Math.max(0, deviation - total / 2), total),
    nMinus1: test(deviation, total - 1),
  };
}
