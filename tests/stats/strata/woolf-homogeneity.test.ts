import { expect, it, test } from "vitest";
import { woolfHomogeneity } from "../../../src/stats/strata/woolf-homogeneity.js";
import { worked, workedInput } from "../../worked.js";
import { strataOf } from "./strata-of.js";

test("Berkeley admissions: p 0.003 of R's documentation", () => {
  const input = workedInput<Record<string, number[][]>>("E-ucb");
  worked("E-ucb", "woolf_p").check(woolfHomogeneity(strataOf(input.strata_admitM_rejectM_admitF_rejectF!)).p);
});

it("is 0 when the strata are alike, and does not depend on their order", () => {
  const row = [5, 3, 2, 7];
  const alike = woolfHomogeneity(strataOf([row, row, row]));
  expect(alike).toMatchObject({ df: 2, p: 1 });
  expect(alike.statistic).toBeCloseTo(0, 15);
  const rows = [row, [0, 9, 4, 4], [3, 3, 8, 1]];
  expect(woolfHomogeneity(strataOf(rows.toReversed())).statistic).toBeCloseTo(
    woolfHomogeneity(strataOf(rows)).statistic,
    12,
  );
});

it("refuses a single stratum", () => {
  expect(() => woolfHomogeneity(strataOf([[1, 2, 3, 4]]))).toThrow(
    new RangeError("woolfHomogeneity: there must be at least two strata, got 1"),
  );
});
