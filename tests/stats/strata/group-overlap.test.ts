import { expect, it } from "vitest";
import { groupOverlap } from "../../../src/stats/strata/group-overlap.js";
import { strataOf } from "./strata-of.js";

it("finds the grades of the invented cohort in which closed and open treatment can be compared", () => {
  const result = groupOverlap(
    strataOf([
      [9, 0, 0, 0],
      [14, 1, 1, 0],
      [10, 1, 2, 2],
      [2, 3, 4, 2],
      [0, 0, 0, 3],
      [0, 0, 0, 0],
    ]),
  );
  expect(result).toMatchObject({
    both: [1, 2, 3],
    firstOnly: [0],
    secondOnly: [4],
    empty: [5],
    cases: { first: { comparable: 31, all: 40 }, second: { comparable: 11, all: 14 } },
  });
});

it("finds none where no grade holds both", () => {
  expect(
    groupOverlap(
      strataOf([
        [9, 0, 0, 0],
        [0, 0, 2, 3],
      ]),
    ),
  ).toMatchObject({
    both: [],
    cases: { first: { comparable: 0, all: 9 }, second: { comparable: 0, all: 5 } },
  });
});

it("refuses wrong counts", () => {
  expect(() => groupOverlap([{ first: { successes: 3, trials: 2 }, second: { successes: 0, trials: 0 } }])).toThrow(
    new RangeError(
      "groupOverlap: strata[0].first.successes must be an integer from 0 to strata[0].first.trials (2), got 3",
    ),
  );
});
