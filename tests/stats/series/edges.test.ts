import fc from "fast-check";
import { expect, it } from "vitest";
import { betweenSeriesVariance, varianceMethods } from "../../../src/stats/series/between-series-variance.js";
import { heterogeneity } from "../../../src/stats/series/heterogeneity.js";
import { leaveOneOut } from "../../../src/stats/series/leave-one-out.js";
import { logitEffects } from "../../../src/stats/series/logit-effects.js";
import { poolByGrade } from "../../../src/stats/series/pool-by-grade.js";
import { poolEffects } from "../../../src/stats/series/pool-effects.js";
import { poolLogisticNormal } from "../../../src/stats/series/pool-logistic-normal.js";
import { predictionInterval } from "../../../src/stats/series/prediction-interval.js";
import { randomInterceptLogistic } from "../../../src/stats/series/random-intercept-logistic.js";
import { numbers } from "../../numbers.js";

const counts = (...pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([successes, trials]) => ({ successes, trials }));
function done<Result extends object>(result: Result): Exclude<Result, { because: string }> {
  if ("because" in result) throw new Error(String(result.because));
  return result as Exclude<Result, { because: string }>;
}

it("what cannot be pooled is undefined, with the reason", () => {
  expect(poolLogisticNormal([])).toEqual({ estimate: null, because: "there is no series" });
  expect(poolLogisticNormal(counts([3, 9]))).toEqual({
    estimate: null,
    because: "variation between series needs at least 2 series, there is 1",
  });
  expect(poolLogisticNormal(counts([0, 9], [0, 4]))).toEqual({ estimate: null, because: "no case succeeded" });
  expect(poolLogisticNormal(counts([9, 9], [4, 4]))).toEqual({ estimate: null, because: "every case succeeded" });
  expect(poolLogisticNormal(counts([0, 9], [4, 4]))).toEqual({
    estimate: null,
    because: "every series is all or nothing, so that the variation between them has no finite estimate",
  });
  const separated = { successes: [3, 0, 0], trials: [5, 7, 4], covariates: [{ name: "open", values: [0, 1, 1] }] };
  expect(randomInterceptLogistic(separated)).toEqual({
    estimate: null,
    because: 'no finite estimate for "open" (separation)',
  });
  expect(poolByGrade([{ series: "A", grade: "I", ...counts([2, 2])[0]! }]).grades[0]!.pooled).toEqual({
    estimate: null,
    because: "variation between series needs at least 2 series, there is 1",
  });
});

it("series without failures or without successes enter as they are", () => {
  const pooled = done(poolLogisticNormal(counts([0, 6], [8, 8], [3, 6], [10, 11])));
  expect(pooled.interval.low).toBeGreaterThan(0);
  expect(pooled.interval.high).toBeLessThan(1);
  expect(pooled.tau.estimate).toBeGreaterThan(1);
});

it("series that vary no more than by chance pool to the crude proportion, tau exactly 0", () => {
  for (const series of [
    counts([5, 10], [5, 10]),
    counts([8, 10], [17, 20], [24, 30]),
    counts([1, 4], [2, 8], [1, 5]),
  ]) {
    const pooled = done(poolLogisticNormal(series));
    expect(pooled.tau).toMatchObject({ estimate: 0, standardError: null, interval: { low: 0 } });
    expect(pooled.noVariation).toEqual({ statistic: 0, p: 1 });
    expect(pooled.estimate).toBeCloseTo(pooled.successes / pooled.trials, 10);
  }
});

it("counts of any kind give ordered, bounded results that mirror when outcomes are swapped", () => {
  const one = fc.tuple(fc.nat(25), fc.nat(25)).filter(([a, b]) => a + b > 0);
  fc.assert(
    fc.property(fc.array(one, { minLength: 2, maxLength: 7 }), (pairs) => {
      const series = pairs.map(([won, lost]) => ({ successes: won, trials: won + lost }));
      const pooled = poolLogisticNormal(series);
      if ("because" in pooled) {
        expect(pooled.because).toMatch(/^(no case succeeded|every case succeeded|every series is all or nothing)/);
        return;
      }
      const swapped = done(poolLogisticNormal(pairs.map(([won, lost]) => ({ successes: lost, trials: won + lost }))));
      const { interval, estimate, tau, noVariation } = pooled;
      for (const value of [interval.low, interval.high, estimate, noVariation.p])
        expect(value >= 0 && value <= 1).toBe(true);
      expect(interval.low).toBeLessThan(estimate);
      expect(interval.high).toBeGreaterThan(estimate);
      expect(tau.interval.low).toBeGreaterThanOrEqual(0);
      expect(tau.interval.low).toBeLessThanOrEqual(tau.estimate);
      expect(tau.interval.high).toBeGreaterThan(tau.estimate);
      expect(1 - swapped.estimate).toBeCloseTo(estimate, 8);
      expect(1 - swapped.interval.low).toBeCloseTo(interval.high, 7);
      expect(1 - swapped.interval.high).toBeCloseTo(interval.low, 7);
      expect(swapped.tau.estimate).toBeCloseTo(tau.estimate, 6);
    }),
    { seed: 21, numRuns: 100 },
  );
});

it("the lower limit of the deviation between series is not the mirror image of the upper one", () => {
  const { tau } = done(poolLogisticNormal(counts([0, 2], [0, 2], [0, 40], [16, 40])));
  // numpy: the fall of the profile likelihood, by the trapezoidal rule with 20,001 points over 12 standard deviations.
  expect(tau.interval.low).toBeCloseTo(0.87371816144, 9);
  expect(tau.interval.high).toBeCloseTo(45.86385240641, 6);
});

it("with equal variances every estimator gives the variance of the estimates less theirs: a closed form", () => {
  const estimates = [0.2, 1.4, -0.7, 2.2, 0.9];
  const mean = estimates.reduce((sum, value) => sum + value, 0) / 5;
  const variance = estimates.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 4;
  for (const method of varianceMethods)
    for (const own of [0.1, 0.5, 3]) {
      const effects = estimates.map((estimate) => ({ estimate, variance: own }));
      expect(betweenSeriesVariance(effects, { method }), method).toBeCloseTo(Math.max(0, variance - own), 10);
    }
});

it("Paule-Mandel solves its equation and REML is the highest point of a dense grid", () => {
  const next = numbers(1982);
  for (let round = 0; round < 60; round++) {
    const effects = Array.from({ length: next(2, 9) }, () => ({
      estimate: next(-300, 300) / 100,
      variance: next(2, 200) / 100,
    }));
    const q = (tau2: number) => {
      const weights = effects.map(({ variance }) => 1 / (variance + tau2));
      const sum = weights.reduce((a, b) => a + b);
      const mean = effects.reduce((total, { estimate }, at) => total + weights[at]! * estimate, 0) / sum;
      const squares = effects.reduce((total, { estimate }, at) => total + weights[at]! * (estimate - mean) ** 2, 0);
      return { squares, restricted: weights.reduce((total, w) => total + Math.log(w), 0) - Math.log(sum) - squares };
    };
    const pauleMandel = betweenSeriesVariance(effects, { method: "Paule-Mandel" });
    if (pauleMandel > 0) expect(q(pauleMandel).squares).toBeCloseTo(effects.length - 1, 9);
    else expect(q(0).squares).toBeLessThanOrEqual(effects.length - 1);
    const best = q(betweenSeriesVariance(effects, { method: "REML" })).restricted;
    for (let step = 0; step < 400; step++) expect(q(step * 0.05).restricted).toBeLessThanOrEqual(best + 1e-12);
  }
});

it("one series, equal series: no variance between them, no prediction", () => {
  const alone = poolEffects([{ estimate: 1, variance: 0.2 }], { between: "REML" });
  expect(alone).toMatchObject({
    estimate: 1,
    tau: 0,
    prediction: null,
    heterogeneity: { q: 0, df: 0, p: 1, iSquared: 0 },
  });
  const equal = Array.from({ length: 4 }, () => ({ estimate: 0.5, variance: 0.3 }));
  for (const between of varianceMethods)
    expect(poolEffects(equal, { between })).toMatchObject({ estimate: 0.5, tau: 0 });
  expect(heterogeneity(equal).iSquared).toBe(0);
  expect(predictionInterval({ estimate: 0, standardError: 3, tau: 4, series: 4, level: 0.95 })!.high).toBeCloseTo(
    // Student's t with 2 degrees of freedom has a closed form.
    5 * 0.95 * Math.sqrt(2 / (1 - 0.95 ** 2)),
    10,
  );
});

it("log odds are corrected only where a series has one outcome", () => {
  const [some, none, all] = logitEffects(counts([2, 8], [0, 4], [4, 4]));
  expect(some).toMatchObject({ corrected: false });
  expect(some!.estimate).toBeCloseTo(Math.log(2 / 6), 14);
  expect(some!.variance).toBeCloseTo(1 / 2 + 1 / 6, 14);
  expect(none).toMatchObject({ corrected: true });
  expect(none!.estimate).toBeCloseTo(Math.log(0.5 / 4.5), 14);
  expect(all!.estimate).toBeCloseTo(-none!.estimate, 14);
});

it("leaving out and pooling by grade are fits of what remains", () => {
  const series = counts([3, 9], [7, 9], [12, 20], [5, 5]);
  const { all, without } = leaveOneOut(series);
  expect(all).toEqual(poolLogisticNormal(series));
  expect(without[1]).toEqual({ left: 1, pooled: poolLogisticNormal(counts([3, 9], [12, 20], [5, 5])) });
  const rows = [
    { series: "A", grade: "I", successes: 3, trials: 9 },
    { series: "A", grade: "II", successes: 1, trials: 5 },
    { series: "B", grade: "I", successes: 7, trials: 9 },
  ];
  const { grades } = poolByGrade(rows);
  expect(grades[0]).toEqual({
    grade: "I",
    series: ["A", "B"],
    successes: 10,
    trials: 18,
    pooled: poolLogisticNormal(counts([3, 9], [7, 9])),
  });
  expect(() => poolByGrade([...rows, rows[0]!])).toThrow(
    new RangeError("poolByGrade: a series must give each grade once, got A I twice"),
  );
});

it("a caller's mistake throws with a complete message", () => {
  expect(() => poolLogisticNormal(counts([3, 2], [1, 2]))).toThrow(
    new RangeError("poolLogisticNormal: series[0].successes must be an integer from 0 to series[0].trials (2), got 3"),
  );
  expect(() => poolLogisticNormal(counts([1, 2], [1, 2]), { nodes: 7 })).toThrow(
    new RangeError("randomInterceptLogistic: nodes must be an integer from 15 to 101, got 7"),
  );
  expect(() => poolEffects([{ estimate: 1, variance: 0 }], { between: "REML" })).toThrow(
    new RangeError("poolEffects: effects[0].variance must be positive and finite, got 0"),
  );
  expect(() => poolEffects([{ estimate: -1e160, variance: 1 }], { between: "REML" })).toThrow(
    new RangeError("poolEffects: effects[0].estimate must be at most 1e+70 in size, got -1e+160"),
  );
  expect(() => heterogeneity([{ estimate: 1, variance: 1e-300 }])).toThrow(
    new RangeError("heterogeneity: effects[0].variance must lie between 1e-70 and 1e+70, got 1e-300"),
  );
  expect(() => poolEffects([], { between: "REML" })).toThrow(
    new RangeError("poolEffects: effects must hold at least 1, got 0"),
  );
  expect(() => poolEffects([{ estimate: 1, variance: 1 }], { between: "ML" as never })).toThrow(
    new TypeError(
      "poolEffects: between must be one of fixed effect, DerSimonian-Laird, Paule-Mandel, REML, Cochran, two-step Cochran, got ML",
    ),
  );
});
