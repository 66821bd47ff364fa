import fc from "fast-check";
import { expect, it } from "vitest";
import { firthLogistic } from "../../../src/stats/models/firth-logistic.js";
import { gradeCovariates } from "../../../src/stats/models/grade-covariates.js";
import { limitCovariates } from "../../../src/stats/models/limit-covariates.js";
import { logistic } from "../../../src/stats/models/logistic.js";
import { logisticDesign } from "../../../src/stats/models/logistic-data.js";
import { findSeparation } from "../../../src/stats/models/separation.js";
import { fitted } from "./sheets.js";

const x = (values: readonly number[], name = "x") => ({ name, values });

it("all or no success has no maximum likelihood estimate, but a penalised one", () => {
  expect(logistic({ successes: [1, 1], covariates: [] })).toEqual({ estimate: null, because: "every case succeeded" });
  expect(logistic({ successes: [0, 0], covariates: [] })).toEqual({ estimate: null, because: "no case succeeded" });
  // Firth's estimate of one proportion is log((x + 1/2) / (n - x + 1/2)): Firth 1993, section 3.
  const counts = [
    [0, 12],
    [12, 12],
    [5, 12],
    [1, 1],
  ] as const;
  for (const [successes, trials] of counts) {
    const fit = fitted(firthLogistic({ successes: [successes], trials: [trials], covariates: [] }));
    const expected = Math.log((successes + 0.5) / (trials - successes + 0.5));
    expect(fit.coefficients[0]!.estimate).toBeCloseTo(expected, 11);
  }
});

it("more covariates than the events allow are refused with the reason", () => {
  const successes = [...Array.from({ length: 42 }, () => 1), ...Array.from({ length: 9 }, () => 0)];
  const covariates = ["technique", "grade"].map((name, j) =>
    x(
      successes.map((_, row) => (row * (j + 3)) % 5),
      name,
    ),
  );
  const because = "2 covariates need at least 10 of the rarer outcome (5 for each), there are 9";
  expect(logistic({ successes, covariates })).toEqual({ estimate: null, because });
  expect(firthLogistic({ successes, covariates })).toEqual({ estimate: null, because });
  const one = logistic({ successes, covariates: covariates.slice(0, 1) }, { eventsPerCovariate: 10 });
  expect(one).toEqual({
    estimate: null,
    because: "1 covariate needs at least 10 of the rarer outcome (10 for each), there are 9",
  });
  const limit = limitCovariates({ successes: 42, cases: 51 }, { eventsPerCovariate: 10 });
  expect(limit).toMatchObject({ rarer: 9, allowed: 0 });
});

it("constant and dependent columns are named", () => {
  const successes = [1, 0, 1, 0, 1, 0];
  const options = { eventsPerCovariate: 1 };
  const [a, b] = [
    [1, 2, 3, 4, 5, 7],
    [2, 0, 1, 0, 1, 1],
  ] as const;
  const sum = a.map((value, row) => 2 * value - b[row]! + 3);
  for (const fit of [logistic, firthLogistic]) {
    expect(fit({ successes, covariates: [x([7, 7, 7, 7, 7, 7], "ward")] }, options)).toEqual({
      estimate: null,
      because: '"ward" has the same value in every row',
    });
    expect(fit({ successes, covariates: [x(a, "a"), x(b, "b"), x(sum, "c")] }, options)).toEqual({
      estimate: null,
      because: '"c" is made up by the columns before it (constant, a, b)',
    });
  }
  expect(firthLogistic({ successes: [1], covariates: [x([3])] }, options)).toEqual({
    estimate: null,
    because: '"x" has the same value in every row',
  });
});

it("separation is told apart and its columns named", () => {
  const options = { eventsPerCovariate: 1 };
  const complete = logistic({ successes: [0, 0, 1, 1], covariates: [x([1, 2, 3, 4])] }, options);
  expect(complete).toEqual({
    estimate: null,
    because: 'successes and failures are separated (complete): no finite estimate for "constant", "x"',
    separation: { kind: "complete", columns: ["constant", "x"] },
  });
  const cases = ["I", "I", "II", "II", "III", "III", "III"];
  const grades = gradeCovariates(cases, { order: ["I", "II", "III"], as: "levels" });
  expect(logistic({ successes: [1, 0, 1, 0, 1, 1, 1], covariates: grades }, options)).toMatchObject({
    separation: { kind: "quasi-complete", columns: ["grade III"] },
  });
});

it("with one covariate, separation is what the ranges of both outcomes say", () => {
  const row = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.boolean());
  fc.assert(
    fc.property(fc.array(row, { minLength: 3, maxLength: 12 }), (rows) => {
      const values = rows.map(([value]) => value);
      const successes = rows.map(([, success]) => (success ? 1 : 0));
      const design = logisticDesign("test", { successes, covariates: [x(values)] });
      if ("estimate" in design) return;
      const [won, lost] = [1, 0].map((outcome) => values.filter((_, at) => successes[at] === outcome));
      const apart = (low: number[], high: number[]) => Math.max(...low) - Math.min(...high);
      const gap = Math.min(apart(won!, lost!), apart(lost!, won!));
      const { kind } = findSeparation(design);
      expect(kind).toBe(gap < 0 ? "complete" : gap === 0 ? "quasi-complete" : "none");
    }),
    { seed: 4, numRuns: 400 },
  );
});

it("whatever the data, the penalised fit is finite, ordered, and unmoved by the units of a covariate", () => {
  const row = fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: 0, max: 2 }), fc.boolean());
  fc.assert(
    fc.property(fc.array(row, { minLength: 4, maxLength: 14 }), (cases) => {
      const successes = cases.map(([, , success]) => (success ? 1 : 0));
      const a = cases.map(([value]) => value);
      const b = x(
        cases.map(([, value]) => value),
        "b",
      );
      const options = { eventsPerCovariate: 0.001 };
      const fit = firthLogistic({ successes, covariates: [x(a, "a"), b] }, options);
      if (!("coefficients" in fit)) {
        expect(fit.because).toMatch(/same value|made up|rarer outcome/);
        return;
      }
      const inMetres = a.map((value) => value / 1000);
      const other = fitted(firthLogistic({ successes, covariates: [x(inMetres, "a"), b] }, options));
      fit.coefficients.forEach(({ estimate, interval, likelihoodRatio, standardError }, j) => {
        for (const value of [estimate, interval.low, interval.high, standardError, likelihoodRatio.p])
          expect(Number.isFinite(value)).toBe(true);
        expect(interval.low).toBeLessThan(estimate);
        expect(interval.high).toBeGreaterThan(estimate);
        // The limits hold 0 exactly where the test does not reach the level.
        if (Math.abs(likelihoodRatio.p - 0.05) > 1e-6)
          expect(interval.low < 0 && interval.high > 0).toBe(likelihoodRatio.p > 0.05);
        const scaled = other.coefficients[j]!.interval.low / (j === 1 ? 1000 : 1);
        expect(Math.abs(scaled - interval.low)).toBeLessThan(1e-8 * (1 + Math.abs(interval.low)));
      });
    }),
    { seed: 11, numRuns: 150 },
  );
});

it("grade enters as one score or as levels against the mildest that occurs", () => {
  const order = ["I", "II", "III", "IV"];
  expect(gradeCovariates(["II", "IV", "II"], { order })).toEqual([{ name: "grade", values: [2, 4, 2] }]);
  expect(gradeCovariates(["II", "IV", "III"], { order, as: "levels", name: "severity" })).toEqual([
    { name: "severity III", values: [0, 0, 1] },
    { name: "severity IV", values: [0, 1, 0] },
  ]);
  expect(() => gradeCovariates(["V"], { order })).toThrow(
    new RangeError("gradeCovariates: every grade must be one of I, II, III, IV, got V"),
  );
});

it("a caller's mistake throws with a complete message", () => {
  expect(() => logistic({ successes: [2], covariates: [] })).toThrow(
    new RangeError("logistic: successes[0] must be an integer from 0 to trials (1), got 2"),
  );
  expect(() => firthLogistic({ successes: [1, 0], covariates: [x([1])] })).toThrow(
    new RangeError('firthLogistic: covariate "x" must hold 2 values, got 1'),
  );
  expect(() => logistic({ successes: [1, 0], covariates: [x([1, 2]), x([2, 1])] })).toThrow(
    new TypeError('logistic: covariate names must differ, got "x" twice'),
  );
  expect(() => logistic({ successes: [1, 0], covariates: [x([1, NaN])] })).toThrow(
    new RangeError('logistic: covariate "x"[1] must be a finite number, got NaN'),
  );
});

it("years and grams fit as well as zeros and ones", () => {
  const years = Array.from({ length: 40 }, (_, at) => 2000 + ((at * 7) % 25));
  const grams = years.map((year, at) => 1e5 * ((at * at) % 11) + year);
  const successes = years.map((year, at) => (year + (at % 5) * 6 > 2018 ? 1 : 0));
  const options = { eventsPerCovariate: 1 };
  const given = fitted(firthLogistic({ successes, covariates: [x(years, "year"), x(grams, "weight")] }, options));
  const near = {
    successes,
    covariates: [
      x(
        years.map((year) => year - 2012),
        "year",
      ),
      x(
        grams.map((gram) => (gram - 5e5) / 1e5),
        "weight",
      ),
    ],
  };
  const centred = fitted(firthLogistic(near, options));
  for (const [at, unit] of [
    [1, 1],
    [2, 1e5],
  ] as const) {
    const [one, other] = [given.coefficients[at]!, centred.coefficients[at]!];
    expect(one.estimate * unit).toBeCloseTo(other.estimate, 9);
    expect(one.interval.low * unit).toBeCloseTo(other.interval.low, 9);
    expect(one.interval.high * unit).toBeCloseTo(other.interval.high, 9);
    expect(one.likelihoodRatio.p).toBeCloseTo(other.likelihoodRatio.p, 9);
  }
});
