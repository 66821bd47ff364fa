// Three large-sample tests of ordered tables against R, which knows them as correlation tests of the cases.
import fc from "fast-check";
import { expect, it, test } from "vitest";
import { jonckheereTerpstra } from "../../../src/stats/tables/jonckheere-terpstra.js";
import { kruskalWallis } from "../../../src/stats/tables/kruskal-wallis.js";
import { linearByLinear } from "../../../src/stats/tables/linear-by-linear.js";
import { cochranArmitage } from "../../../src/stats/trend/cochran-armitage.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";

const random = numbers(41);
const tables = Array.from({ length: 300 }, () =>
  Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => random(0, 6))),
).filter((table) => table.every((row) => row.some((count) => count > 0)));

/** R code that turns each table into cases with a row number x and a column number y, then evaluates `body`. */
function overCases(body: string): string {
  return `apply(matrix(c(${tables.flat(2).join()}), nrow = 12), 2, function(v) {
    m <- matrix(v, 3, byrow = TRUE); x <- rep(row(m), m); y <- rep(col(m), m); ${body} })`;
}

it("Kruskal-Wallis equals R's kruskal.test", async () => {
  const values = await r(overCases("t <- kruskal.test(y, factor(x)); c(t$statistic, t$parameter, t$p.value)"));
  tables.forEach((table, i) => {
    const { statistic, p, ...rest } = kruskalWallis(table);
    expectRelative(statistic!, values[3 * i]!, 1e-9, "statistic");
    expect((rest as { df: number }).df).toBe(values[3 * i + 1]);
    expectRelative(p!, values[3 * i + 2]!, 1e-9, "p");
  });
});

it("linear-by-linear equals (cases - 1) times the squared correlation of R's cor", async () => {
  const values = await r(overCases("c(cor(x, y), (length(x) - 1) * cor(x, y)^2)"));
  tables.forEach((table, i) => {
    const result = linearByLinear(table);
    if (result.p === null) throw new Error("these tables have a correlation");
    expect(Math.abs(result.correlation - values[2 * i]!)).toBeLessThan(1e-12);
    expect(Math.abs(result.statistic - values[2 * i + 1]!)).toBeLessThan(1e-10);
  });
});

it("Jonckheere-Terpstra has the z and p of Kendall's rank correlation in R, without continuity correction", async () => {
  const values = await r(
    overCases('t <- cor.test(x, y, method = "kendall", exact = FALSE); c(t$statistic, t$p.value)'),
  );
  tables.forEach((table, i) => {
    const { z, p } = jonckheereTerpstra(table);
    expect(Math.abs(z! - values[2 * i]!)).toBeLessThan(1e-9);
    expectRelative(p!, values[2 * i + 1]!, 1e-8, "p");
  });
});

test("income by job satisfaction: 2.983 for the linear association (Agresti 2002, section 3.4, from memory)", () => {
  const { statistic } = linearByLinear([
    [1, 3, 10, 6],
    [2, 3, 10, 7],
    [1, 6, 14, 12],
    [0, 1, 9, 11],
  ]);
  expect(statistic!.toFixed(2)).toBe("2.98");
});

it("Jonckheere-Terpstra has the mean and variance of all orders of the results, counted one by one", () => {
  for (const table of [
    [
      [2, 1],
      [0, 2],
      [1, 1],
    ],
    [
      [1, 1, 0],
      [0, 1, 2],
    ],
    [
      [1, 0, 1],
      [1, 1, 0],
      [0, 1, 1],
    ],
  ]) {
    const results = table[0]!.flatMap((_, j) => Array<number>(table.reduce((sum, row) => sum + row[j]!, 0)).fill(j));
    const sizes = table.map((row) => row.reduce((sum, count) => sum + count, 0));
    const statistics = permutations(results).map((order) => {
      let from = 0;
      const rows = sizes.map((size) => order.slice(from, (from += size)));
      let pairs = 0;
      rows.forEach((row, i) =>
        rows.slice(i + 1).forEach((later) => {
          for (const x of row) for (const y of later) pairs += y > x ? 1 : y === x ? 0.5 : 0;
        }),
      );
      return pairs;
    });
    const mean = statistics.reduce((sum, s) => sum + s, 0) / statistics.length;
    const variance = statistics.reduce((sum, s) => sum + (s - mean) ** 2, 0) / statistics.length;
    const result = jonckheereTerpstra(table);
    expect(result).toMatchObject({
      mean: expect.closeTo(mean, 10) as number,
      variance: expect.closeTo(variance, 10) as number,
    });
  }
});

function permutations(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item, i) =>
    permutations([...items.slice(0, i), ...items.slice(i + 1)]).map((rest) => [item, ...rest]),
  );
}

const anyTable = fc
  .array(fc.array(fc.nat(4), { minLength: 3, maxLength: 3 }), { minLength: 2, maxLength: 4 })
  .filter((table) => table.flat().some((count) => count > 0));

it("turns the sign, not the p, when the rows are read from the other end", () => {
  fc.assert(
    fc.property(anyTable, (table) => {
      for (const test of [linearByLinear, jonckheereTerpstra]) {
        const [one, other] = [test(table), test(table.toReversed())];
        if (one.p === null) {
          expect(other.p).toBeNull();
          expect(one.because).toMatch(/^all cases/);
        } else {
          expect(other.p).toBeCloseTo(one.p, 10);
          expect((other as { z: number }).z).toBeCloseTo(-one.z, 10);
        }
      }
      const groups = kruskalWallis(table);
      if (groups.p !== null) expect(kruskalWallis(table.toReversed()).statistic).toBeCloseTo(groups.statistic, 10);
      expect(groups.p).not.toBeNaN();
    }),
  );
});

it("linear-by-linear of two columns is the Cochran-Armitage trend with cases less one", () => {
  const table = [
    [9, 0],
    [15, 1],
    [12, 3],
    [6, 5],
  ];
  const trend = cochranArmitage(table.map(([yes, no]) => ({ successes: yes!, trials: yes! + no! })));
  expect(linearByLinear(table).statistic).toBeCloseTo((trend.z! ** 2 * 50) / 51, 10);
});

it("says why there is nothing to test", () => {
  const one = [
    [3, 2],
    [0, 0],
  ];
  expect(kruskalWallis(one)).toMatchObject({ p: null, because: "all cases are in one row" });
  expect(jonckheereTerpstra(one)).toMatchObject({ p: null, because: "all cases are in one row" });
  expect(linearByLinear(one)).toMatchObject({ p: null, because: "all cases have the same row score" });
  expect(
    linearByLinear(
      [
        [1, 1],
        [1, 1],
      ],
      { columnScores: [0.1, 0.1] },
    ),
  ).toMatchObject({
    because: "all cases have the same column score",
  });
  expect(() => linearByLinear([[1, 1]], { columnScores: [1] })).toThrow(
    new RangeError("linearByLinear: columnScores must hold one score a category (2), got 1"),
  );
});
