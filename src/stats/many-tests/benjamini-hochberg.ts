import { falling, testsRun, type AdjustedTests, type TestsRunOption } from "./tests-run.js";

/**
 * Benjamini and Hochberg's adjustment: holds the expected share of false findings among the findings, for tests that are
 * independent or positively dependent.
 *
 * @param p p values, each in [0, 1]
 * @param options.tests tests run in all, when more than are given
 * @throws RangeError when a p value or the number of tests is out of range
 * @see Benjamini and Hochberg 1995, J R Stat Soc B 57:289-300
 * @example benjaminiHochberg([0.01, 0.04, 0.03]).adjusted // => [0.03, 0.04, 0.04]
 */
export function benjaminiHochberg(
  p: readonly number[],
  options: TestsRunOption = {},
): AdjustedTests<"benjaminiHochberg"> {
  const tests = testsRun("benjaminiHochberg", p, options);
  let smallest = 1;
  const adjusted = falling(p, (value, rank) => (smallest = Math.min(smallest, (tests / (rank + 1)) * value)));
  return { method: "benjaminiHochberg", tests, p, adjusted };
}
