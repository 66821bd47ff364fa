import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { blaker } from "../../../src/stats/one-proportion/blaker.js";
import { clopperPearson } from "../../../src/stats/clopper-pearson.js";
import { midP } from "../../../src/stats/one-proportion/mid-p.js";
import { proportionInterval, proportionMethods } from "../../../src/stats/one-proportion/proportion-intervals.js";

const counts = fc
  .integer({ min: 1, max: 2000 })
  .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));
const levels = fc.double({ min: 0.001, max: 0.9999, noNaN: true });
const slack = 1e-11;

describe.each(proportionMethods)("%s", (method) => {
  const limits = (successes: number, trials: number, level: number) =>
    proportionInterval({ successes, trials }, { method, level }).interval;

  it("mirrors when failures are counted for successes", () => {
    fc.assert(
      fc.property(counts, levels, ([x, n], level) => {
        const [one, other] = [limits(x, n, level), limits(n - x, n, level)];
        expect(Math.abs(one.low + other.high - 1)).toBeLessThan(slack);
        expect(Math.abs(one.high + other.low - 1)).toBeLessThan(slack);
      }),
    );
  });

  it("nests, cut to [0, 1]: a higher level gives a wider interval", () => {
    fc.assert(
      fc.property(counts, levels, levels, ([x, n], one, other) => {
        const narrow = limits(x, n, Math.min(one, other));
        const wide = limits(x, n, Math.max(one, other));
        expect(Math.max(0, wide.low)).toBeLessThanOrEqual(Math.max(0, narrow.low) + slack);
        expect(Math.min(1, wide.high)).toBeGreaterThanOrEqual(Math.min(1, narrow.high) - slack);
      }),
    );
  });

  it("rises with the count, cut to [0, 1]", () => {
    fc.assert(
      fc.property(counts, levels, ([x, n], level) => {
        if (x === n) return;
        const [at, above] = [limits(x, n, level), limits(x + 1, n, level)];
        expect(Math.max(0, above.low)).toBeGreaterThanOrEqual(Math.max(0, at.low) - slack);
        expect(Math.min(1, above.high)).toBeGreaterThanOrEqual(Math.min(1, at.high) - slack);
      }),
    );
  });

  it("answers for a million cases, and in good time", () => {
    const start = performance.now();
    for (const x of [0, 1, 500_000, 999_999, 1_000_000]) {
      const { low, high } = limits(x, 1_000_000, 0.95);
      expect(low <= high && Number.isFinite(low) && Number.isFinite(high)).toBe(true);
    }
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

// Wald's and Agresti and Coull's limits are not cut to the possible range.
describe.each(proportionMethods.filter((method) => !/^wald|^agresti/.test(method)))("%s", (method) => {
  it("stays within [0, 1] and reaches exactly 0 without successes, exactly 1 without failures", () => {
    fc.assert(
      fc.property(counts, levels, ([x, trials], level) => {
        const limits = (successes: number) => proportionInterval({ successes, trials }, { method, level }).interval;
        const { low, high } = limits(x);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(high);
        expect(limits(0).low).toBe(0);
        expect(limits(trials).high).toBe(1);
      }),
    );
  });
});

it("puts mid-P and Blaker inside the exact interval", () => {
  fc.assert(
    fc.property(counts, levels, ([x, n], level) => {
      const outer = clopperPearson(x, n, { level }).interval;
      for (const { interval } of [midP(x, n, { level }), blaker(x, n, { level })]) {
        expect(interval.low).toBeGreaterThanOrEqual(outer.low - slack);
        expect(interval.high).toBeLessThanOrEqual(outer.high + slack);
      }
    }),
  );
});

test.each(proportionMethods)("%s refuses counts and levels out of range by name", (method) => {
  const call =
    (successes: number, trials: number, level = 0.95) =>
    () =>
      proportionInterval({ successes, trials }, { method, level });
  expect(call(24, 23)).toThrow(new RangeError(`${method}: successes must be an integer from 0 to trials (23), got 24`));
  expect(call(-1, 5)).toThrow(RangeError);
  expect(call(1.5, 4)).toThrow(RangeError);
  expect(call(NaN, 4)).toThrow(RangeError);
  expect(call(0, 0)).toThrow(new RangeError(`${method}: trials must be an integer of at least 1, got 0`));
  expect(call(1, 2, 1)).toThrow(new RangeError(`${method}: level must lie between 0 and 1, got 1`));
});

it("refuses a method or an option that it does not know", () => {
  const count = { successes: 1, trials: 2 };
  expect(() => proportionInterval(count, { method: "wilsn" as "wilson" })).toThrow(
    'proportionInterval: no method is named "wilsn"',
  );
  expect(() => midP(1, 2, { levl: 0.9 } as object)).toThrow(
    new TypeError('midP: no option is named "levl" (known: level)'),
  );
});
