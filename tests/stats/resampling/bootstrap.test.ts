import { expect, it } from "vitest";
import { bcaInterval } from "../../../src/stats/resampling/bca-interval.js";
import { bootstrap } from "../../../src/stats/resampling/bootstrap.js";
import reference from "../../reference/bca.json" with { type: "json" };
import { expectRelative } from "../../relative.js";

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const variance = (values: readonly number[]): number => mean(values.map((value) => (value - mean(values)) ** 2));
function done<Result extends object>(result: Result): Extract<Result, { interval: unknown }> {
  if (!("interval" in result)) throw new Error((result as unknown as { because: string }).because);
  return result as Extract<Result, { interval: unknown }>;
}

it("limits, bias and acceleration equal the printed formulas in 40 digits", () => {
  reference.cases.forEach((c, at) => {
    const result = done(bcaInterval({ ...c, values: Float64Array.from(c.values) }));
    expectRelative(result.bias, Number(c.bias), 1e-10, `${at}: bias`);
    expectRelative(result.acceleration, Number(c.acceleration), 1e-10, `${at}: acceleration`);
    expectRelative(result.interval.low, Number(c.interval[0]), 1e-10, `${at}: low`);
    expectRelative(result.interval.high, Number(c.interval[1]), 1e-10, `${at}: high`);
  });
});

it("variance of 26 spatial test scores: Efron and Tibshirani 1993, Table 14.2 (from memory), within simulation error", () => {
  const scores = [48, 36, 20, 29, 42, 42, 20, 42, 22, 41, 45, 14, 6, 0, 33, 28, 34, 4, 32, 24, 47, 41, 24, 26, 30, 41];
  const result = done(bootstrap(scores, variance, { level: 0.9, draws: 20_000 }));
  expect(result.estimate).toBeCloseTo(171.5, 1);
  expect(result.acceleration).toBeCloseTo(0.061, 3);
  // Printed from 2,000 resamples: bias 0.146, BCa 115.8 to 259.6, percentile 100.8 to 233.9.
  expect(Math.abs(result.bias - 0.146)).toBeLessThan(0.06);
  expect(Math.abs(result.interval.low - 115.8)).toBeLessThan(4);
  expect(Math.abs(result.interval.high - 259.6)).toBeLessThan(6);
  expect(Math.abs(result.percentile.low - 100.8)).toBeLessThan(4);
  expect(Math.abs(result.percentile.high - 233.9)).toBeLessThan(5);
});

it("five values: all 3,125 resamples give the limits that many draws come to", () => {
  const data = [1, 4, 5, 9, 16];
  const all: number[] = [];
  for (let code = 0; code < 5 ** 5; code++)
    all.push(mean([0, 1, 2, 3, 4].map((place) => data[Math.floor(code / 5 ** place) % 5]!)));
  const left = [data.map((out) => mean(data.filter((value) => value !== out)))];
  const exact = done(bcaInterval({ estimate: mean(data), values: Float64Array.from(all), left, level: 0.9 }));
  const drawn = done(bootstrap(data, mean, { level: 0.9, draws: 50_000, seed: 3 }));
  expect(drawn.acceleration).toBeCloseTo(exact.acceleration, 12);
  expect(Math.abs(drawn.bias - exact.bias)).toBeLessThan(0.03);
  expect(Math.abs(drawn.standardError - exact.standardError)).toBeLessThan(0.04);
  expect(Math.abs(drawn.interval.low - exact.interval.low)).toBeLessThan(0.25);
  expect(Math.abs(drawn.interval.high - exact.interval.high)).toBeLessThan(0.25);
});

it("the same seed gives the same limits, another seed others", () => {
  const data = [12, 15, 9, 30, 22, 17, 8];
  const once = done(bootstrap(data, mean, { draws: 999, seed: 42 }));
  expect(done(bootstrap(data, mean, { draws: 999, seed: 42 }))).toEqual(once);
  expect(done(bootstrap(data, mean, { draws: 999, seed: 43 })).interval).not.toEqual(once.interval);
});

it("clusters are drawn whole and strata keep their size", () => {
  const limbs = [1, 1, 2, 3, 3, 4, 5, 6].map((child, at) => ({
    child: `c${child}`,
    grade: child < 4 ? "I" : "II",
    at,
  }));
  const seen = new Set<string>();
  const result = done(
    bootstrap(
      limbs,
      (drawn) => {
        seen.add(drawn.map(({ child, at }) => `${child}-${at}`).join());
        const inFirst = drawn.filter(({ grade }) => grade === "I");
        // Children 1 and 3 have two limbs: each limb of a drawn child comes with the other.
        for (const child of ["c1", "c3"]) {
          const places = drawn.filter((limb) => limb.child === child).map(({ at }) => at);
          expect(places.filter((at) => at === places[0]).length * 2).toBe(places.length);
        }
        return mean(inFirst.map(({ at }) => at)) + drawn.length;
      },
      { draws: 200, cluster: ({ child }) => child, stratum: ({ grade }) => grade },
    ),
  );
  expect(result).toMatchObject({ unit: "cluster", units: 6, strata: 2 });
  expect(seen.size).toBeGreaterThan(20);
  expect(() =>
    bootstrap(limbs, (drawn) => drawn.length, { cluster: ({ child }) => child, stratum: ({ at }) => `${at % 2}` }),
  ).toThrow(new RangeError('bootstrap: a cluster must lie in one stratum, got "c1" in "0" and "1"'));
});

it("is measured in any unit", () => {
  const one = bootstrap([1, 2, 4, 9, 3], mean, { draws: 999 }) as { acceleration: number };
  const huge = bootstrap([1e200, 2e200, 4e200, 9e200, 3e200], mean, { draws: 999 }) as { acceleration: number };
  expect(one.acceleration).toBeGreaterThan(0);
  expect(huge.acceleration).toBeCloseTo(one.acceleration, 12);
});

it("what cannot be resampled is undefined, with the reason", () => {
  const short = { draws: 200 };
  expect(bootstrap([], mean)).toEqual({ estimate: null, because: "resampling needs at least 2 units, there are 0" });
  expect(bootstrap([1], mean)).toEqual({ estimate: null, because: "resampling needs at least 2 units, there is 1" });
  expect(bootstrap([1, 2], () => null)).toEqual({
    estimate: null,
    because: "the statistic is undefined in these data",
  });
  expect(bootstrap([3, 3, 3], mean, short)).toEqual({
    estimate: null,
    because: "the statistic is the same in every resample",
  });
  expect(bootstrap([0.1, 0.1, 0.1], mean, short)).toHaveProperty("because");
  expect(bootstrap([1, 2, 3], (values) => Math.max(...values), short)).toHaveProperty("interval");
  const ratio = (values: readonly number[]) => (values.includes(0) ? 1 / mean(values) : null);
  expect(bootstrap([0, 1, 2, 3], ratio, short)).toMatchObject({
    estimate: null,
    because: expect.stringMatching(/^the statistic was undefined in \d+ of 200 resamples$/) as string,
  });
  expect(() => bootstrap([1, 2], mean, { seed: -1 })).toThrow(
    new RangeError("bootstrap: seed must be an integer from 0 to 4294967295, got -1"),
  );
});
