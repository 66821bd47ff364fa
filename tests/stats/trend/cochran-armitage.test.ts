import { expect, it, test } from "vitest";
import { cochranArmitage } from "../../../src/stats/trend/cochran-armitage.js";
import { r } from "../../r.js";
import { numbers } from "../../numbers.js";
import { worked, workedInput } from "../../worked.js";

const groupsOf = (x: readonly number[], n: readonly number[]) =>
  x.map((successes, i) => ({ successes, trials: n[i]! }));

test.each([
  ["E-fleiss-smokers", 0, "trend"],
  ["E-fleiss-smokers", 1, "trend0001"],
  ["E-cochran1954", 0, "trend"], // printed 6.66, unrounded 6.6657
  ["E-armitage1955-tonsils", 0, "trend"],
] as const)("squares to the published chi-square of %s, scores %i", (id, which, key) => {
  const { x, n, scores } = workedInput<{ x: number[]; n: number[]; scores: number[] | number[][] }>(id);
  const chosen = (Array.isArray(scores[0]) ? scores[which] : scores) as number[];
  const { z, p } = cochranArmitage(groupsOf(x, n), { scores: chosen });
  worked(id, key).check(z! ** 2);
  if (id === "E-fleiss-smokers") worked(id, `${key}_p`).check(p!);
});

it("gives p 0.0036 over grades I to IV of the invented cohort, falling", () => {
  // 9/9, 15/16, 12/15, 6/11, computed in R 4.2.2.
  const { z, p } = cochranArmitage(groupsOf([9, 15, 12, 6], [9, 16, 15, 11]));
  expect(z).toBeLessThan(0);
  expect(p).toBeCloseTo(0.0036, 4);
});

it("agrees with R's prop.trend.test on 300 sets of groups", async () => {
  const random = numbers(11);
  const sets = Array.from({ length: 300 }, () => {
    const n = Array.from({ length: 4 }, () => 1 + random(0, 60));
    return { n, x: n.map((trials) => random(0, trials)) };
  });
  const rows = sets.flatMap(({ x, n }) => [...x, ...n]);
  const p = await r(
    `apply(matrix(c(${rows.join()}), nrow = 8), 2, function(v) suppressWarnings(prop.trend.test(v[1:4], v[5:8]))$p.value)`,
  );
  sets.forEach(({ x, n }, i) => {
    const result = cochranArmitage(groupsOf(x, n));
    if (result.p === null) expect(p[i]).toBeNaN();
    // R fits a weighted regression: its p holds about 1e-10.
    else expect(Math.abs(result.p - p[i]!)).toBeLessThan(1e-10);
  });
});

it("keeps the score of an empty group", () => {
  const withGap = cochranArmitage(groupsOf([3, 0, 9], [10, 0, 10]));
  expect(withGap.z).toBeCloseTo(cochranArmitage(groupsOf([3, 9], [10, 10]), { scores: [1, 3] }).z!, 12);
});

it("says why there is no trend to test", () => {
  expect(cochranArmitage(groupsOf([0, 0], [4, 5]))).toMatchObject({
    z: null,
    p: null,
    because: "all cases had the same outcome",
  });
  expect(cochranArmitage(groupsOf([2, 0], [4, 0]))).toMatchObject({
    z: null,
    because: "all cases have the same score",
  });
});

it("does not take the rounding of a mean for a spread, nor overflow on large scores", () => {
  const groups = groupsOf([3, 2, 1], [7, 9, 11]);
  expect(cochranArmitage(groups, { scores: [0.1, 0.1, 0.1] })).toMatchObject({
    z: null,
    because: "all cases have the same score",
  });
  const { z } = cochranArmitage(groups);
  expect(cochranArmitage(groups, { scores: [1e300, 2e300, 3e300] }).z).toBeCloseTo(z!, 12);
  expect(cochranArmitage(groups, { scores: [1e-300, 2e-300, 3e-300] }).z).toBeCloseTo(z!, 12);
});

it("refuses an option it does not know and scores that are not numbers", () => {
  const groups = groupsOf([1, 2], [3, 4]);
  expect(() => cochranArmitage(groups, { score: [1, 2] } as object)).toThrow(
    new TypeError('cochranArmitage: no option is named "score" (known: scores)'),
  );
  expect(() => cochranArmitage(groups, { scores: [1, NaN] })).toThrow(
    new RangeError("cochranArmitage: scores[1] must be a finite number, got NaN"),
  );
});
