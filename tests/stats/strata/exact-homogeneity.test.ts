import { expect, it } from "vitest";
import { exactHomogeneity } from "../../../src/stats/strata/exact-homogeneity.js";
import { numbers } from "../../numbers.js";
import { hypergeometricWays, ratio } from "../../exact/rational.js";
import { expectRelative } from "../../relative.js";
import { strataOf } from "./strata-of.js";

/** Every set of tables with the margins and the sum, in whole numbers. */
function enumeratedP(rows: readonly (readonly number[])[]): number {
  const strata = rows.map(([a, b, c, d]) => hypergeometricWays(a! + b!, c! + d!, a! + c!));
  const sum = rows.reduce((all, [a], i) => all + a! - strata[i]!.low, 0);
  const own = rows.reduce((product, [a], i) => product * strata[i]!.ways[a! - strata[i]!.low]!, 1n);
  let [all, noLikelier] = [0n, 0n];
  const fill = (k: number, left: number, ways: bigint): void => {
    if (k === strata.length) {
      if (left !== 0) return;
      all += ways;
      if (ways * 10_000_000n <= own * 10_000_001n) noLikelier += ways;
      return;
    }
    strata[k]!.ways.forEach((own, x) => {
      if (x <= left) fill(k + 1, left - x, ways * own);
    });
  };
  fill(0, sum, 1n);
  return ratio(noLikelier, all);
}

it("equals full enumeration in whole numbers to 1e-12 on 200 sets of strata", () => {
  const random = numbers(9);
  for (let i = 0; i < 200; i++) {
    const rows = Array.from({ length: 2 + (i % 3) }, () => Array.from({ length: 4 }, () => random(0, 8) + (i % 2)));
    const informative = rows.filter(([a, b, c, d]) => a! + b! > 0 && c! + d! > 0 && a! + c! > 0 && b! + d! > 0);
    const result = exactHomogeneity(strataOf(rows));
    if (informative.length < 2) expect(result.p).toBeNull();
    else expectRelative(result.p!, enumeratedP(informative), 1e-12, JSON.stringify(rows));
  }
});

it("keeps its digits in large strata that point opposite ways", () => {
  const rows = [
    [140, 10, 20, 130],
    [15, 135, 128, 22],
  ];
  const expected = enumeratedP(rows);
  expect(expected).toBeLessThan(1e-60);
  expectRelative(exactHomogeneity(strataOf(rows)).p!, expected, 1e-11, "far tail");
});

it("does not depend on the order of strata, groups or outcomes", () => {
  const rows = [
    [14, 1, 1, 1],
    [10, 1, 2, 2],
    [2, 3, 4, 2],
  ];
  const { p } = exactHomogeneity(strataOf(rows));
  for (const other of [
    rows.toReversed(),
    rows.map(([a, b, c, d]) => [c!, d!, a!, b!]),
    rows.map(([a, b, c, d]) => [b!, a!, d!, c!]),
    [...rows, [9, 0, 0, 0]],
  ])
    expectRelative(exactHomogeneity(strataOf(other)).p!, p!, 1e-12, JSON.stringify(other));
});

it("says when it cannot answer", () => {
  expect(exactHomogeneity(strataOf([[1, 2, 3, 4]]))).toMatchObject({
    p: null,
    because: "homogeneity needs two strata with both groups and both outcomes, there is 1",
  });
  const many = Array.from({ length: 12 }, () => [60, 60, 60, 60]);
  expect(exactHomogeneity(strataOf(many))).toMatchObject({
    p: null,
    because: "the strata have too many possible tables; use the Breslow-Day test",
  });
});
