import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { koopman } from "../../../src/stats/two-groups/koopman.js";
import { miettinenNurminen } from "../../../src/stats/two-groups/miettinen-nurminen.js";
import reference from "../../reference/score-limits.json";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";
import { groups, twoGroups } from "./groups.js";

test(`limits of the difference and of the ratio equal ${reference.source} to 1e-10`, () => {
  expect(reference.cases.length).toBeGreaterThan(40);
  for (const c of reference.cases) {
    const of = `${c.first.successes}/${c.first.trials} ${c.second.successes}/${c.second.trials} at ${c.level}`;
    const difference = miettinenNurminen(c, { level: c.level }).interval;
    // A difference of proportions has its digits after the point: absolute.
    expect(Math.abs(difference.low - Number(c.miettinenNurminen.low)), `${of} low`).toBeLessThan(1e-11);
    expect(Math.abs(difference.high - Number(c.miettinenNurminen.high)), `${of} high`).toBeLessThan(1e-11);
    const ratio = koopman(c, { level: c.level }).interval;
    expectRelative(ratio.low, Number(c.koopman.low), 1e-10, `${of} ratio low`);
    expectRelative(ratio.high, Number(c.koopman.high), 1e-10, `${of} ratio high`);
  }
});

describe("published examples", () => {
  test.each([
    ["B-newcombe1998-a", groups(56, 70, 48, 80)],
    ["B-newcombe1998-b", groups(9, 10, 3, 10)],
    ["B-newcombe1998-e", groups(0, 10, 0, 20)],
    ["B-newcombe1998-f", groups(0, 10, 0, 10)],
    // Printed 0.028, which is the limit without the factor N/(N - 1); with it 0.0270.
    ["B-fagerland2015-perondi", groups(7, 34, 1, 34)],
  ])("%s, Miettinen-Nurminen", (id, data) => {
    const { interval } = miettinenNurminen(data);
    worked(id, "mn_lo").check(interval.low);
    worked(id, "mn_hi").check(interval.high);
  });
  test("epinephrine, Koopman: printed 1.21 where 1.2209 rounds to 1.22", () => {
    const { interval } = koopman(groups(7, 34, 1, 34));
    worked("B-fagerland2015-perondi", "koopman_lo").check(interval.low);
    worked("B-fagerland2015-perondi", "koopman_hi").check(interval.high);
  });
});

describe("properties", () => {
  // At levels near 0 the limits crowd the estimate, and against all or nothing come within 1e-6 of an end, where the cubic holds fewer digits.
  const levels = fc.double({ min: 0.5, max: 0.999, noNaN: true });
  it("mirrors when the groups change places", () => {
    fc.assert(
      fc.property(twoGroups(200), levels, ({ first, second }, level) => {
        const one = miettinenNurminen({ first, second }, { level }).interval;
        const other = miettinenNurminen({ first: second, second: first }, { level }).interval;
        expect(other.low).toBeCloseTo(-one.high, 11);
        expect(other.high).toBeCloseTo(-one.low, 11);
        const ratio = koopman({ first, second }, { level }).interval;
        const inverse = koopman({ first: second, second: first }, { level }).interval;
        expectRelative(inverse.low, 1 / ratio.high, 1e-9, "ratio");
      }),
    );
  });
  it("stays in range, holds the estimate and widens with the level", () => {
    fc.assert(
      fc.property(twoGroups(200), levels, (data, level) => {
        const { estimate, interval } = miettinenNurminen(data, { level });
        const wider = miettinenNurminen(data, { level: (1 + level) / 2 }).interval;
        expect(interval.low).toBeLessThanOrEqual(estimate);
        expect(interval.high).toBeGreaterThanOrEqual(estimate);
        expect(wider.low).toBeLessThanOrEqual(interval.low);
        expect(wider.high).toBeGreaterThanOrEqual(interval.high);
        expect(wider.low).toBeGreaterThanOrEqual(-1);
        expect(wider.high).toBeLessThanOrEqual(1);
        const ratio = koopman(data, { level });
        const widerRatio = koopman(data, { level: (1 + level) / 2 }).interval;
        expect(widerRatio.low).toBeLessThanOrEqual(ratio.interval.low);
        expect(widerRatio.high).toBeGreaterThanOrEqual(ratio.interval.high);
        if (ratio.estimate === null) return;
        expect(ratio.interval.low).toBeLessThanOrEqual(ratio.estimate);
        expect(ratio.interval.high).toBeGreaterThanOrEqual(ratio.estimate);
      }),
    );
  });
});

describe("edges", () => {
  it("reaches exactly -1, 1, 0 and infinity", () => {
    expect(miettinenNurminen(groups(5, 5, 0, 9)).interval.high).toBe(1);
    expect(miettinenNurminen(groups(0, 5, 9, 9)).interval.low).toBe(-1);
    expect(koopman(groups(0, 5, 2, 9)).interval.low).toBe(0);
    expect(koopman(groups(3, 5, 0, 9)).interval.high).toBe(Infinity);
  });
  it("has no risk ratio when neither group had a success", () => {
    expect(koopman(groups(0, 5, 0, 9))).toMatchObject({
      estimate: null,
      because: "neither group had a success, so the risk ratio is 0 over 0",
      interval: { low: 0, high: Infinity },
    });
  });
  it("refuses impossible counts, levels and options by name", () => {
    for (const [name, interval] of Object.entries({ miettinenNurminen, koopman })) {
      expect(() => interval(groups(1, 2, 3, 2))).toThrow(
        new RangeError(`${name}: second.successes must be an integer from 0 to second.trials (2), got 3`),
      );
      expect(() => interval(groups(1, 2, 1, 2), { level: 2 })).toThrow(
        new RangeError(`${name}: level must lie between 0 and 1, got 2`),
      );
      expect(() => interval(groups(1, 2, 1, 2), { z: 2 } as object)).toThrow(TypeError);
    }
  });
});
