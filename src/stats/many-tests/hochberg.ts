import { falling, testsRun, type AdjustedTests, type TestsRunOption } from "./tests-run.js";

/**
 * Hochberg's step-up adjustment: as Holm's, never larger, for tests that are independent or positively dependent.
 *
 * @param p p values, each in [0, 1]
 * @param options.tests tests run in all, when more than are given
 * @throws RangeError when a p value or the number of tests is out of range
 * @see Hochberg 1988, Biometrika 75:800-802
 * @example hochberg([0.01, 0.04, 0.03]).adjusted // => [0.03, 0.04, 0.04]
 */
export function hochberg(p: readonly number[], options: TestsRunOption = {}): AdjustedTests<"hochberg"> {
  const tests = testsRun("hochberg", p, options);
  let smallest = 1;
  const adjusted = falling(p, (value, rank) => (smallest = Math.min(smallest, (tests - rank) * value)));
  return { method: "hochberg", tests, p, adjusted };
}
