import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { newcombePaired } from "../../../src/stats/paired/newcombe-paired.js";
import { tango } from "../../../src/stats/paired/tango.js";
import { wilson } from "../../../src/stats/wilson.js";
import reference from "../../reference/score-limits.json";

const somePairs = fc
  .record({ both: fc.nat(40), firstOnly: fc.nat(40), secondOnly: fc.nat(40), neither: fc.nat(40) })
  .filter((p) => p.both + p.firstOnly + p.secondOnly + p.neither > 0);

test(`Tango's limits equal ${reference.source} to 1e-11`, () => {
  expect(reference.paired.length).toBeGreaterThan(25);
  for (const { firstOnly, secondOnly, pairs, level, tango: expected } of reference.paired) {
    const both = Math.floor((pairs - firstOnly - secondOnly) / 3);
    const neither = pairs - firstOnly - secondOnly - both;
    const { interval } = tango({ both, firstOnly, secondOnly, neither }, { level });
    const of = `${firstOnly} and ${secondOnly} of ${pairs}`;
    expect(Math.abs(interval.low - Number(expected.low)), of).toBeLessThan(1e-11);
    expect(Math.abs(interval.high - Number(expected.high)), of).toBeLessThan(1e-11);
  }
});

test("Newcombe 1998, table II: 36, 12, 2, 0 has 0.0569 to 0.3404 by method 10 (printed values from memory)", () => {
  const { estimate, interval } = newcombePaired({ both: 36, firstOnly: 12, secondOnly: 2, neither: 0 });
  expect(estimate).toBeCloseTo(0.2, 14);
  expect(interval.low).toBeCloseTo(0.0569, 4);
  expect(interval.high).toBeCloseTo(0.3404, 4);
});

it("squares and adds the Wilson distances alone when an empty margin leaves no correlation", () => {
  const { interval } = newcombePaired({ both: 8, firstOnly: 4, secondOnly: 0, neither: 0 });
  const one = wilson(12, 12).interval;
  const two = wilson(8, 12).interval;
  expect(interval.low).toBeCloseTo(1 / 3 - Math.hypot(1 - one.low, two.high - 2 / 3), 14);
  expect(interval.high).toBeCloseTo(1 / 3 + Math.hypot(0, 2 / 3 - two.low), 14);
});

describe.each([
  ["newcombePaired", newcombePaired],
  ["tango", tango],
] as const)("%s", (name, interval) => {
  const levels = fc.double({ min: 0.1, max: 0.999, noNaN: true });
  it("changes sign when first and second change places, and when failure is counted for success", () => {
    fc.assert(
      fc.property(somePairs, levels, ({ both, firstOnly, secondOnly, neither }, level) => {
        const one = interval({ both, firstOnly, secondOnly, neither }, { level }).interval;
        for (const other of [
          interval({ both, firstOnly: secondOnly, secondOnly: firstOnly, neither }, { level }).interval,
          interval({ both: neither, firstOnly: secondOnly, secondOnly: firstOnly, neither: both }, { level }).interval,
        ]) {
          expect(other.low).toBeCloseTo(-one.high, 11);
          expect(other.high).toBeCloseTo(-one.low, 11);
        }
      }),
    );
  });
  it("stays in range and holds the estimate", () => {
    fc.assert(
      fc.property(somePairs, levels, (pairs, level) => {
        const { estimate, interval: limits } = interval(pairs, { level });
        expect(limits.low).toBeGreaterThanOrEqual(-1);
        expect(limits.low).toBeLessThanOrEqual(estimate);
        expect(limits.high).toBeGreaterThanOrEqual(estimate);
        expect(limits.high).toBeLessThanOrEqual(1);
      }),
    );
  });
  it("refuses what is no count, levels and options by name", () => {
    const pairs = { both: 1, firstOnly: 1, secondOnly: 1, neither: 1 };
    expect(() => interval({ ...pairs, neither: 0.5 })).toThrow(
      new RangeError(`${name}: neither must be an integer of at least 0, got 0.5`),
    );
    expect(() => interval(pairs, { level: 95 })).toThrow(
      new RangeError(`${name}: level must lie between 0 and 1, got 95`),
    );
    expect(() => interval(pairs, { paired: true } as object)).toThrow(TypeError);
  });
});

it("widens Tango's interval with the level", () => {
  const pairs = { both: 20, firstOnly: 9, secondOnly: 3, neither: 8 };
  let last = tango(pairs, { level: 0.5 }).interval;
  for (const level of [0.8, 0.9, 0.95, 0.99, 0.999]) {
    const { low, high } = tango(pairs, { level }).interval;
    expect(low).toBeLessThan(last.low);
    expect(high).toBeGreaterThan(last.high);
    last = { low, high };
  }
});
