import fc from "fast-check";
import { expect, it, test } from "vitest";
import { woolf } from "../../../src/stats/two-groups/woolf.js";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";
import { groups, twoGroups } from "./groups.js";

test.each([
  ["B-agresti-aspirin", groups(189, 11034, 104, 11037), { odds: "estimate", or_lo: "low", or_hi: "high" }],
  ["B-agresti-larynx", groups(21, 23, 15, 18), { odds: "estimate", woolf_lo: "low", woolf_hi: "high" }],
  ["B-fagerland2015-perondi", groups(7, 34, 1, 34), { woolf_lo: "low", woolf_hi: "high" }],
])("published example %s", (id, data, keys) => {
  const { estimate, interval } = woolf(data);
  const ours = { estimate, ...interval } as Record<string, number>;
  for (const [key, field] of Object.entries(keys)) worked(id, key).check(ours[field]!);
});

test("Physicians' Health Study (Agresti 2007): the log odds ratio and its standard error", () => {
  const { estimate, interval } = woolf(groups(189, 11034, 104, 11037));
  worked("B-agresti-aspirin", "logor").check(Math.log(estimate!));
  worked("B-agresti-aspirin", "selog").check(Math.log(interval.high! / interval.low!) / (2 * 1.959963984540054));
});

it("inverts when the groups change places", () => {
  fc.assert(
    fc.property(twoGroups(200), ({ first, second }) => {
      const one = woolf({ first, second });
      const other = woolf({ first: second, second: first });
      expect([other.estimate === null, other.interval.low === null]).toEqual([
        one.estimate === null,
        one.interval.low === null,
      ]);
      if (one.estimate !== null) expectRelative(other.estimate!, 1 / one.estimate, 1e-12, "estimate");
      if (one.interval.low !== null) expectRelative(other.interval.low!, 1 / one.interval.high, 1e-12, "low");
    }),
  );
});

it("leaves limits undefined with an empty cell, whose odds ratio is 0, infinite or undefined", () => {
  const because = "a cell of the table is empty, so the standard error of the log odds ratio is not defined";
  expect(woolf(groups(5, 5, 1, 4))).toMatchObject({ estimate: Infinity, interval: { low: null, high: null, because } });
  expect(woolf(groups(0, 5, 1, 4))).toMatchObject({ estimate: 0, interval: { low: null, high: null, because } });
  expect(woolf(groups(0, 5, 0, 4))).toMatchObject({ estimate: null, because: "both products of the odds ratio are 0" });
});

it("refuses impossible counts, levels and options by name", () => {
  expect(() => woolf(groups(-1, 2, 1, 2))).toThrow(
    new RangeError("woolf: first.successes must be an integer from 0 to first.trials (2), got -1"),
  );
  expect(() => woolf(groups(1, 2, 1, 2), { level: 0 })).toThrow(
    new RangeError("woolf: level must lie between 0 and 1, got 0"),
  );
  expect(() => woolf(groups(1, 2, 1, 2), { lvl: 0.9 } as object)).toThrow(TypeError);
});
