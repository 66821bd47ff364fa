import fc from "fast-check";
import { expect, it, test } from "vitest";
import { standardisedProportion } from "../../../src/stats/strata/standardised-proportion.js";
import { wilson } from "../../../src/stats/wilson.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";

const groupsOf = (pairs: readonly (readonly number[])[]) =>
  pairs.map(([successes, trials]) => ({ successes: successes!, trials: trials! }));

it("equals the weighted sum and the recovered variances written out in R", async () => {
  const random = numbers(55);
  const sets = Array.from({ length: 300 }, () =>
    Array.from({ length: 4 }, () => {
      const trials = random(1, 40);
      return [random(0, trials), trials, random(1, 30)];
    }),
  );
  // prop.test without correction gives R's Wilson limits.
  const values = await r(`apply(matrix(c(${sets.flat(2).join()}), nrow = 12), 2, function(v) {
    m <- matrix(v, nrow = 3); w <- m[3, ] / sum(m[3, ]); p <- m[1, ] / m[2, ]
    ci <- apply(m, 2, function(g) suppressWarnings(prop.test(g[1], g[2], correct = FALSE)$conf.int))
    e <- sum(w * p); c(e, e - sqrt(sum((w * (p - ci[1, ]))^2)), e + sqrt(sum((w * (ci[2, ] - p))^2))) })`);
  sets.forEach((set, i) => {
    const result = standardisedProportion(
      groupsOf(set),
      set.map(([, , weight]) => weight!),
    );
    if (result.estimate === null) throw new Error("every grade has cases");
    expectRelative(result.estimate, values[3 * i]!, 1e-12, "estimate");
    expect(Math.abs(result.interval.low - values[3 * i + 1]!)).toBeLessThan(1e-12);
    expect(Math.abs(result.interval.high - values[3 * i + 2]!)).toBeLessThan(1e-12);
  });
});

test("the invented cohort with its own mix is its crude proportion", () => {
  const groups = groupsOf([
    [9, 9],
    [15, 16],
    [12, 15],
    [6, 11],
  ]);
  const result = standardisedProportion(groups, [9, 16, 15, 11]);
  expect(result.estimate).toBeCloseTo(42 / 51, 14);
});

it("is Wilson's interval with one grade, and never leaves 0 to 1", () => {
  for (const [successes, trials] of [
    [0, 5],
    [5, 5],
    [3, 8],
    [1, 1],
  ] as const) {
    const result = standardisedProportion([{ successes, trials }], [7]);
    const { estimate, interval } = wilson(successes, trials);
    expect(result.estimate).toBe(estimate);
    expect(result.interval!.low).toBeCloseTo(interval.low, 15);
    expect(result.interval!.high).toBeCloseTo(interval.high, 15);
  }
  const group = fc
    .integer({ min: 1, max: 12 })
    .chain((trials) =>
      fc.record({ trials: fc.constant(trials), successes: fc.nat(trials), weight: fc.integer({ min: 1, max: 9 }) }),
    );
  fc.assert(
    fc.property(fc.array(group, { minLength: 1, maxLength: 5 }), (groups) => {
      const mix = groups.map(({ weight }) => weight);
      const { estimate, interval } = standardisedProportion(groups, mix);
      const { interval: wide } = standardisedProportion(groups, mix, { level: 0.99 });
      expect(interval!.low).toBeGreaterThanOrEqual(0);
      expect(interval!.high).toBeLessThanOrEqual(1);
      expect(estimate).toBeGreaterThanOrEqual(interval!.low);
      expect(estimate).toBeLessThanOrEqual(interval!.high);
      expect(wide!.low).toBeLessThanOrEqual(interval!.low);
      expect(wide!.high).toBeGreaterThanOrEqual(interval!.high);
    }),
  );
});

it("reaches exactly 0 and 1 when every grade does", () => {
  const none = standardisedProportion(
    groupsOf([
      [0, 9],
      [0, 3],
      [0, 7],
    ]),
    [3, 5, 9],
  );
  expect([none.estimate, none.interval!.low]).toEqual([0, 0]);
  const all = standardisedProportion(
    groupsOf([
      [9, 9],
      [3, 3],
      [7, 7],
    ]),
    [3, 5, 9],
  );
  expect(all.estimate).toBe(1);
  expect(all.interval!.high).toBe(1);
});

it("has no estimate when the mix holds a grade without cases, and ignores grades outside the mix", () => {
  const groups = groupsOf([
    [9, 10],
    [0, 0],
    [3, 6],
  ]);
  expect(standardisedProportion(groups, [1, 1, 1])).toMatchObject({
    estimate: null,
    interval: null,
    missing: [1],
    because: "1 of the groups in the mix has no cases",
  });
  expect(standardisedProportion(groups, [1, 0, 1]).estimate).toBeCloseTo(0.7, 14);
});

it("refuses a mix that is none", () => {
  const groups = groupsOf([
    [1, 2],
    [1, 2],
  ]);
  const refuse = (mix: number[], message: string): void =>
    expect(() => standardisedProportion(groups, mix)).toThrow(new RangeError(`standardisedProportion: ${message}`));
  refuse([1], "mix must hold one weight a group (2), got 1");
  refuse([1, -1], "mix[1] must be a number of at least 0, got -1");
  refuse([0, 0], "mix must add up to more than 0, got 0");
});
