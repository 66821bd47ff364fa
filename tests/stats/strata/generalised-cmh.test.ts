import { expect, it, test } from "vitest";
import { generalisedCmh } from "../../../src/stats/strata/generalised-cmh.js";
import { mantelHaenszel } from "../../../src/stats/strata/mantel-haenszel.js";
import { kruskalWallis } from "../../../src/stats/tables/kruskal-wallis.js";
import { linearByLinear } from "../../../src/stats/tables/linear-by-linear.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked, workedInput } from "../../worked.js";
import { strataOf } from "./strata-of.js";

test("income by job satisfaction within sex (Agresti 2002, p. 297): 10.2, 9.03 and 6.16", () => {
  const id = "E-agresti-jobsat-gcmh";
  const input = workedInput<{
    female: number[][];
    male: number[][];
    income_scores: number[];
    satisfaction_scores: number[];
  }>(id);
  const result = generalisedCmh([input.female, input.male], {
    rowScores: input.income_scores,
    columnScores: input.satisfaction_scores,
  });
  worked(id, "gcmh").check(result.association.statistic!);
  worked(id, "rowmean").check(result.meanScores.statistic!);
  worked(id, "corr").check(result.correlation.statistic!);
  expect([result.association.df, result.meanScores.df, result.correlation.df]).toEqual([9, 3, 1]);
});

it("equals R's mantelhaen.test of larger tables", async () => {
  const random = numbers(12);
  const sets = Array.from({ length: 200 }, () =>
    Array.from({ length: 2 }, () => Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => random(1, 9)))),
  );
  const values = await r(`apply(matrix(c(${sets.flat(3).join()}), nrow = 24), 2, function(v) {
    x <- aperm(array(v, c(4, 3, 2)), c(2, 1, 3)); t <- mantelhaen.test(x); c(t$statistic, t$parameter, t$p.value) })`);
  sets.forEach((tables, i) => {
    const { statistic, df, p } = generalisedCmh(tables).association;
    expectRelative(statistic!, values[3 * i]!, 1e-9, "statistic");
    expect(df).toBe(values[3 * i + 1]);
    expectRelative(p!, values[3 * i + 2]!, 1e-9, "p");
  });
});

it("is the Cochran-Mantel-Haenszel test when the tables are 2 x 2, all three ways", () => {
  const rows = [
    [14, 1, 1, 1],
    [10, 1, 2, 2],
    [2, 3, 4, 2],
  ];
  const { chiSquare, p } = mantelHaenszel(strataOf(rows));
  const result = generalisedCmh(
    rows.map(([a, b, c, d]) => [
      [a!, b!],
      [c!, d!],
    ]),
  );
  for (const test of [result.association, result.meanScores, result.correlation]) {
    expect(test).toMatchObject({ df: 1 });
    expectRelative(test.statistic!, chiSquare!, 1e-12, "statistic");
    expectRelative(test.p!, p!, 1e-12, "p");
  }
});

it("with one stratum and ranks as scores, mean scores are Kruskal-Wallis and correlation is linear-by-linear", () => {
  const table = [
    [5, 3, 1],
    [2, 4, 4],
    [1, 2, 6],
    [0, 3, 5],
  ];
  const columns = [8, 12, 16];
  const ranks = columns.map((count, j) => columns.slice(0, j).reduce((sum, n) => sum + n, 0) + (count + 1) / 2);
  const result = generalisedCmh([table], { columnScores: ranks });
  expectRelative(result.meanScores.statistic!, kruskalWallis(table).statistic!, 1e-12, "mean scores");
  expectRelative(
    result.correlation.statistic!,
    linearByLinear(table, { columnScores: ranks }).statistic!,
    1e-12,
    "correlation",
  );
});

it("drops what a stratum cannot say instead of failing", () => {
  const full = [
    [3, 4, 2],
    [5, 1, 2],
  ];
  const withEmpty = generalisedCmh([
    full,
    [
      [0, 0, 0],
      [0, 0, 0],
    ],
    [
      [4, 0, 0],
      [2, 0, 0],
    ],
  ]);
  expect(withEmpty.association).toEqual(generalisedCmh([full]).association);
  expect(
    generalisedCmh([
      [
        [3, 0, 2],
        [5, 0, 2],
      ],
    ]).association,
  ).toMatchObject({ df: 1 });
  expect(
    generalisedCmh([
      [
        [3, 0],
        [2, 0],
      ],
    ]).association,
  ).toMatchObject({
    statistic: null,
    p: null,
    because: "no stratum has cases in two rows and in two columns with different scores",
  });
});

it("refuses strata of different shapes", () => {
  expect(() =>
    generalisedCmh([
      [
        [1, 2],
        [3, 4],
      ],
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
    ]),
  ).toThrow(new RangeError("generalisedCmh: tables[1] must have 2 rows of 2 columns as the first has"));
  expect(() => generalisedCmh([])).toThrow(
    new RangeError("generalisedCmh: there must be at least one stratum, got none"),
  );
});
