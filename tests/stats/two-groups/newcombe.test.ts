import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { newcombe } from "../../../src/stats/two-groups/newcombe.js";
import { worked } from "../../worked.js";
import { groups, twoGroups } from "./groups.js";

describe("published examples", () => {
  test.each([
    ["B-newcombe1998-a", groups(56, 70, 48, 80)],
    ["B-newcombe1998-b", groups(9, 10, 3, 10)],
    ["B-newcombe1998-e", groups(0, 10, 0, 20)],
    ["B-newcombe1998-f", groups(0, 10, 0, 10)],
    ["B-newcombe1998-h", groups(10, 10, 0, 10)],
    ["B-fagerland2015-perondi", groups(7, 34, 1, 34)],
  ])("%s, method 10", (id, data) => {
    const { interval } = newcombe(data);
    worked(id, "newcombe_lo").check(interval.low);
    worked(id, "newcombe_hi").check(interval.high);
  });
});

describe("properties", () => {
  const levels = fc.double({ min: 0.01, max: 0.999, noNaN: true });
  it("changes sign when the groups change places, and when failure is counted for success", () => {
    fc.assert(
      fc.property(twoGroups(500), levels, ({ first, second }, level) => {
        const { estimate, interval } = newcombe({ first, second }, { level });
        const fail = ({ successes, trials }: typeof first) => ({ successes: trials - successes, trials });
        for (const other of [
          newcombe({ first: second, second: first }, { level }),
          newcombe({ first: fail(first), second: fail(second) }, { level }),
        ]) {
          expect(other.estimate).toBeCloseTo(-estimate, 14);
          expect(other.interval.low).toBeCloseTo(-interval.high, 13);
          expect(other.interval.high).toBeCloseTo(-interval.low, 13);
        }
      }),
    );
  });
  it("stays within -1 and 1, holds the estimate and widens with the level", () => {
    fc.assert(
      fc.property(twoGroups(500), levels, (data, level) => {
        const { estimate, interval } = newcombe(data, { level });
        const wider = newcombe(data, { level: (1 + level) / 2 }).interval;
        expect(interval.low).toBeLessThanOrEqual(estimate);
        expect(interval.high).toBeGreaterThanOrEqual(estimate);
        expect(wider.low).toBeLessThanOrEqual(interval.low);
        expect(wider.high).toBeGreaterThanOrEqual(interval.high);
        expect(wider.low).toBeGreaterThanOrEqual(-1);
        expect(wider.high).toBeLessThanOrEqual(1);
      }),
    );
  });
});

it("refuses impossible counts, levels and options by name", () => {
  expect(() => newcombe(groups(1, 2, 0, 0))).toThrow(
    new RangeError("newcombe: second.trials must be an integer of at least 1, got 0"),
  );
  expect(() => newcombe(groups(1, 2, 1, 2), { level: 1 })).toThrow(
    new RangeError("newcombe: level must lie between 0 and 1, got 1"),
  );
  expect(() => newcombe(groups(1, 2, 1, 2), { correct: true } as object)).toThrow(
    new TypeError('newcombe: no option is named "correct" (known: level)'),
  );
});
