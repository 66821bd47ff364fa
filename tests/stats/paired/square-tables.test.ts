import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { bowker } from "../../../src/stats/paired/bowker.js";
import { mcNemar } from "../../../src/stats/paired/mc-nemar.js";
import { orderedChange } from "../../../src/stats/paired/ordered-change.js";
import { stuartMaxwell } from "../../../src/stats/paired/stuart-maxwell.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";

const vision = [
  [1520, 266, 124, 66],
  [234, 1512, 432, 78],
  [117, 362, 1772, 205],
  [36, 82, 179, 492],
];
type Test = { statistic: number; df: number; p: number };

test("distance vision of 7,477 women (Stuart 1955; Bowker 1948; Agresti 2002, chapter 10)", () => {
  const symmetry = bowker(vision) as Test;
  worked("C-stuart-vision", "bowker").check(symmetry.statistic);
  expect(symmetry.df).toBe(6);
  const margins = stuartMaxwell(vision) as Test;
  worked("C-stuart-vision", "stuart").check(margins.statistic);
  expect(margins.df).toBe(3);
});

test("Bowker's test equals R's mcnemar.test on 1,000 random 4 x 4 tables", async () => {
  const random = numbers(1948);
  const tables = Array.from({ length: 1000 }, () => Array.from({ length: 16 }, () => random(1, 40)));
  const expected = await r(`
    m <- matrix(c(${tables.flat().join(",")}), nrow = 16)
    apply(m, 2, function(v) { t <- mcnemar.test(matrix(v, 4, byrow = TRUE)); c(t$statistic, t$p.value) })`);
  tables.forEach((cells, i) => {
    const table = [0, 4, 8, 12].map((from) => cells.slice(from, from + 4));
    const { statistic, p } = bowker(table) as Test;
    expectRelative(statistic, expected[2 * i]!, 1e-11, `table ${i}`);
    expectRelative(p, expected[2 * i + 1]!, 1e-11, `table ${i} p`);
  });
});

test("Stuart-Maxwell equals the closed form for three categories (Fleiss 1981, section 8.2) on 300 random tables", () => {
  const random = numbers(1970);
  for (let i = 0; i < 300; i++) {
    const table = Array.from({ length: 3 }, () => Array.from({ length: 3 }, () => random(1, 30)));
    const mean = (j: number, k: number): number => (table[j]![k]! + table[k]![j]!) / 2;
    const d = [0, 1, 2].map((j) => [0, 1, 2].reduce((sum, k) => sum + table[j]![k]! - table[k]![j]!, 0));
    const [m01, m02, m12] = [mean(0, 1), mean(0, 2), mean(1, 2)];
    const expected =
      (m12 * d[0]! ** 2 + m02 * d[1]! ** 2 + m01 * d[2]! ** 2) / (2 * (m01 * m12 + m01 * m02 + m02 * m12));
    const { statistic, df } = stuartMaxwell(table) as Test;
    expect(Math.abs(statistic - expected)).toBeLessThan(1e-11 * Math.max(1, expected));
    expect(df).toBe(2);
  }
});

describe("two categories", () => {
  it("make all three tests McNemar's", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(60), (b, c) => {
        const table = [
          [5, b],
          [c, 7],
        ];
        const expected = mcNemar({ both: 5, firstOnly: b, secondOnly: c, neither: 7 });
        if (!("exact" in expected)) throw new Error("there are discordant pairs");
        const change = orderedChange(table);
        if (!("exact" in change)) throw new Error("there are changes");
        for (const test of [bowker(table) as Test, stuartMaxwell(table) as Test]) {
          expect(test.df).toBe(1);
          expectRelative(test.statistic, expected.asymptotic.statistic, 1e-12, "statistic");
          expectRelative(test.p, expected.asymptotic.p, 1e-11, "p");
        }
        expectRelative(change.asymptotic.p, expected.asymptotic.p, 1e-12, "ordered");
        expectRelative(change.exact as number, expected.exact, 1e-11, "exact");
      }),
    );
  });
});

describe("change of ordered grades", () => {
  it("equals the enumeration of every direction of every change", () => {
    const random = numbers(21);
    for (let trial = 0; trial < 60; trial++) {
      const table = Array.from({ length: 4 }, () => Array.from({ length: 4 }, () => random(0, 1)));
      const steps = table.flatMap((row, i) => row.flatMap((count, j) => (count && i !== j ? [Math.abs(i - j)] : [])));
      const observed = Math.abs(table.reduce((s, row, i) => s + row.reduce((t, n, j) => t + n * (j - i), 0), 0));
      if (steps.length === 0) continue;
      let asFar = 0;
      for (let signs = 0; signs < 2 ** steps.length; signs++) {
        const sum = steps.reduce((total, step, k) => total + ((signs >> k) & 1 ? step : -step), 0);
        if (sum >= observed) asFar++;
      }
      const result = orderedChange(table);
      if (!("exact" in result)) throw new Error("there are changes");
      expectRelative(result.exact as number, Math.min(1, (2 * asFar) / 2 ** steps.length), 1e-12, `table ${trial}`);
    }
  });
  it("says the mean change in steps, second less first, and turns its sign with the table", () => {
    const table = [
      [10, 4, 1],
      [1, 12, 5],
      [0, 2, 9],
    ];
    const turned = table.map((_, i) => table.map((row) => row[i]!));
    // 4 + 5 up by one, 1 up by two, 1 + 2 down by one: 8 steps in 44 pairs, variance 12 + 4.
    expect(orderedChange(table)).toMatchObject({ meanChange: 8 / 44, asymptotic: { z: 2 } });
    expect(orderedChange(turned)).toMatchObject({ meanChange: -8 / 44, asymptotic: { z: -2 } });
  });
  it("leaves the exact p of a vast table out, with the reason, and answers a large one within a second", () => {
    expect(
      orderedChange([
        [0, 20_001],
        [0, 0],
      ]),
    ).toMatchObject({
      exact: { estimate: null, because: "the changes add up to more than 20000 steps" },
    });
    const start = performance.now();
    expect(orderedChange(vision)).toMatchObject({ exact: expect.any(Number) });
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

describe("edges", () => {
  it("is undefined when no pair changed", () => {
    const table = [
      [3, 0],
      [0, 4],
    ];
    const because = "every pair has the same category twice";
    expect(bowker(table)).toEqual({ method: "bowker", table, estimate: null, because });
    expect(stuartMaxwell(table)).toEqual({ method: "stuartMaxwell", table, estimate: null, because });
    expect(orderedChange(table)).toEqual({ method: "orderedChange", table, estimate: null, because });
  });
  it("tests categories that no change links among themselves, and leaves unused ones out", () => {
    const two = [
      [1, 6, 0, 0],
      [2, 3, 0, 0],
      [0, 0, 4, 9],
      [0, 0, 1, 2],
    ];
    // Two separate McNemar tests: (6 - 2)^2 / 8 + (9 - 1)^2 / 10.
    expect(stuartMaxwell(two)).toMatchObject({ statistic: expect.closeTo(2 + 6.4, 12), df: 2 });
    expect(bowker(two)).toMatchObject({ statistic: expect.closeTo(2 + 6.4, 12), df: 2 });
    const unused = [
      [1, 6, 0],
      [2, 3, 0],
      [0, 0, 0],
    ];
    expect(stuartMaxwell(unused)).toMatchObject({ statistic: expect.closeTo(2, 12), df: 1 });
  });
  it("refuses tables that are not square, hold no counts or nobody, by name", () => {
    for (const [name, test] of Object.entries({ bowker, stuartMaxwell, orderedChange })) {
      expect(() => test([[1]])).toThrow(new RangeError(`${name}: the table must have at least 2 categories, got 1`));
      expect(() => test([[1, 2], [3]])).toThrow(
        new RangeError(`${name}: row 2 must have 2 cells as there are rows, got 1`),
      );
      expect(() =>
        test([
          [1, 2],
          [3, NaN],
        ]),
      ).toThrow(new RangeError(`${name}: row 2, column 2 must be an integer of at least 0, got NaN`));
      expect(() =>
        test([
          [0, 0],
          [0, 0],
        ]),
      ).toThrow(new RangeError(`${name}: there must be at least one pair, got 0`));
    }
  });
});
