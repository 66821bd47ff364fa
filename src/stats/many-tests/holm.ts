import { rising, testsRun, type AdjustedTests, type TestsRunOption } from "./tests-run.js";

/**
 * Holm's step-down adjustment: holds the chance of any false finding, whatever the tests share.
 *
 * @param p p values, each in [0, 1]
 * @param options.tests tests run in all, when more than are given
 * @throws RangeError when a p value or the number of tests is out of range
 * @see Holm 1979, Scand J Stat 6:65-70
 * @example holm([0.01, 0.04, 0.03]).adjusted // => [0.03, 0.06, 0.06]
 */
export function holm(p: readonly number[], options: TestsRunOption = {}): AdjustedTests<"holm"> {
  const tests = testsRun("holm", p, options);
  let largest = 0;
  const adjusted = rising(p, (value, rank) => (largest = Math.max(largest, Math.min(1, (tests - rank) * value))));
  return { method: "holm", tests, p, adjusted };
}
