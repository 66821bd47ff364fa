import { chiSquareUpper } from "../../numeric/chi-square.js";
import { normalUpper } from "../../numeric/normal.js";
import { requireTwoGroups, type TwoGroups } from "../two-groups/groups.js";

/** Two-sided large-sample p values of a fourfold table; null where an empty cell leaves one undefined. */
export interface LargeSampleTests extends TwoGroups {
  readonly method: "largeSampleTests";
  /** Difference over its unpooled standard error. */
  readonly difference: number | null;
  /** Log odds ratio over Woolf's standard error, as a logistic regression prints it. */
  readonly logOddsRatio: number | null;
  /** Log risk ratio over its standard error. */
  readonly logRiskRatio: number | null;
  /** Likelihood ratio chi-square (G) with one degree of freedom. */
  readonly likelihoodRatio: number | null;
}

/**
 * The large-sample tests that printed p values come from besides the chi-square tests.
 * @param groups successes of trials in each group
 * @throws RangeError when a count is out of range
 * @see Agresti 2013, Categorical Data Analysis, 3rd ed., sections 3.1 and 3.2 (from memory)
 * @example largeSampleTests({ first: { successes: 34, trials: 38 }, second: { successes: 9, trials: 15 } }).logOddsRatio // => 0.0201364
 */
export function largeSampleTests({ first, second }: TwoGroups): LargeSampleTests {
  requireTwoGroups("largeSampleTests", { first, second });
  const [a, c] = [first.successes, second.successes];
  const [b, d] = [first.trials - a, second.trials - c];
  const [p, q] = [a / first.trials, c / second.trials];
  const variance = (p * (1 - p)) / first.trials + (q * (1 - q)) / second.trials;
  const full = a > 0 && b > 0 && c > 0 && d > 0;
  return {
    method: "largeSampleTests",
    first,
    second,
    difference: variance > 0 ? twoSided((p - q) / Math.sqrt(variance)) : null,
    logOddsRatio: full ? twoSided(Math.log((a * d) / (b * c)) / Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d)) : null,
    logRiskRatio:
      a > 0 && c > 0 && b + d > 0
        ? twoSided(Math.log(p / q) / Math.sqrt(1 / a - 1 / first.trials + 1 / c - 1 / second.trials))
        : null,
    likelihoodRatio: a + c > 0 && b + d > 0 ? chiSquareUpper(likelihoodRatio([a, b], [c, d]), 1) : null,
  };
}

const twoSided = (z: number): number => Math.min(1, 2 * normalUpper(Math.abs(z)));

function likelihoodRatio(first: readonly [number, number], second: readonly [number, number]): number {
  const total = first[0] + first[1] + second[0] + second[1];
  let sum = 0;
  for (const row of [first, second])
    for (const column of [0, 1] as const) {
      const expected = ((row[0] + row[1]) * (first[column] + second[column])) / total;
      if (row[column] > 0) sum += row[column] * Math.log(row[column] / expected);
    }
  return Math.max(0, 2 * sum);
}
