import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { exactDifference, exactDifferenceMethods } from "../../../src/stats/two-groups/exact-difference.js";
import reference from "../../reference/exact-difference.json";
import { groups, twoGroups } from "./groups.js";

test(`limits by both methods equal ${reference.source}`, () => {
  expect(reference.cases.length).toBeGreaterThan(5);
  for (const { first, second, level, ...expected } of reference.cases)
    for (const method of exactDifferenceMethods) {
      const { interval } = exactDifference({ first, second }, { level, method });
      const of = `${first.successes}/${first.trials} ${second.successes}/${second.trials} ${method}`;
      // The reference looks at 4001 second proportions and halves to 1e-7.
      expect(Math.abs(interval.low - expected[method].low), `${of} low`).toBeLessThan(2e-6);
      expect(Math.abs(interval.high - expected[method].high), `${of} high`).toBeLessThan(2e-6);
    }
});

it("solves the equation that has a closed form: all against none, where only the observed table is as extreme", () => {
  // P = (p2 + d)^n (1 - p2)^n is largest at p2 = (1 - d)/2, so ((1 + d)/2)^(2n) = alpha at the lower limit.
  for (const [n, level] of [
    [3, 0.95],
    [5, 0.9],
    [9, 0.8],
  ] as const) {
    const { interval } = exactDifference(groups(n, n, 0, n), { level });
    expect(interval.low).toBeCloseTo(2 * ((1 - level) / 2) ** (1 / (2 * n)) - 1, 7);
    expect(interval.high).toBe(1);
  }
});

describe("properties", () => {
  it("mirrors when the groups change places, stays in range and holds the estimate", () => {
    fc.assert(
      fc.property(twoGroups(9), fc.constantFrom(...exactDifferenceMethods), ({ first, second }, method) => {
        const { estimate, interval } = exactDifference({ first, second }, { method });
        const other = exactDifference({ first: second, second: first }, { method }).interval;
        expect(other.low).toBeCloseTo(-interval.high, 12);
        expect(other.high).toBeCloseTo(-interval.low, 12);
        expect(interval.low).toBeGreaterThanOrEqual(-1);
        expect(interval.low).toBeLessThanOrEqual(estimate);
        expect(interval.high).toBeGreaterThanOrEqual(estimate);
        expect(interval.high).toBeLessThanOrEqual(1);
      }),
      { numRuns: 25 },
    );
  });
  it("covers every difference at its level or above (7 and 6 cases, 95%)", () => {
    const limits = Array.from({ length: 8 }, (_, a) =>
      Array.from({ length: 7 }, (_, c) => exactDifference(groups(a, 7, c, 6)).interval),
    );
    const ways = (n: number, x: number): number =>
      Array.from({ length: x }, (_, i) => (n - i) / (i + 1)).reduce((product, factor) => product * factor, 1);
    for (let p1 = 0.02; p1 < 1; p1 += 0.04)
      for (let p2 = 0.02; p2 < 1; p2 += 0.04) {
        let covered = 0;
        limits.forEach((row, a) =>
          row.forEach(({ low, high }, c) => {
            const p = ways(7, a) * p1 ** a * (1 - p1) ** (7 - a) * ways(6, c) * p2 ** c * (1 - p2) ** (6 - c);
            if (low <= p1 - p2 && p1 - p2 <= high) covered += p;
          }),
        );
        expect(covered).toBeGreaterThanOrEqual(0.95);
      }
  });
});

it("refuses impossible counts, methods, levels and totals by name", () => {
  expect(() => exactDifference(groups(3, 2, 1, 2))).toThrow(
    new RangeError("exactDifference: first.successes must be an integer from 0 to first.trials (2), got 3"),
  );
  expect(() => exactDifference(groups(1, 2, 1, 2), { method: "exact" as "chanZhang" })).toThrow(
    new RangeError('exactDifference: method must be "chanZhang" or "agrestiMin", got exact'),
  );
  expect(() => exactDifference(groups(1, 2, 1, 2), { level: 1 })).toThrow(
    new RangeError("exactDifference: level must lie between 0 and 1, got 1"),
  );
  expect(() => exactDifference(groups(1, 2000, 1, 1))).toThrow(
    new RangeError("exactDifference: both groups together must have at most 2000 trials, got 2001"),
  );
  expect(() => exactDifference(groups(1, 2, 1, 2), { exact: true } as object)).toThrow(TypeError);
});
