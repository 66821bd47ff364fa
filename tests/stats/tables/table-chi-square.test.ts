import { expect, it, test } from "vitest";
import { tableChiSquare } from "../../../src/stats/tables/table-chi-square.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked, workedInput } from "../../worked.js";

test.each([
  ["E-fleiss-smokers", "x2"],
  ["E-cochran1954", "x2"],
  ["E-armitage1955-tonsils", "x2"],
] as const)("equals the published chi-square of %s", (id, key) => {
  const { x, n } = workedInput<{ x: number[]; n: number[] }>(id);
  const { statistic, p } = tableChiSquare(x.map((count, i) => [count, n[i]! - count]));
  worked(id, key).check(statistic!);
  if (id === "E-fleiss-smokers") worked(id, "x2_p").check(p!);
});

it("agrees with R's chisq.test on 1,500 tables", async () => {
  const random = numbers(6);
  const tables = Array.from({ length: 1500 }, () =>
    Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => random(0, 12) + 1)),
  );
  const values = await r(`apply(matrix(c(${tables.flat(2).join()}), nrow = 12), 2, function(v) {
    t <- suppressWarnings(chisq.test(matrix(v, 3, byrow = TRUE))); c(t$statistic, t$parameter, t$p.value, min(t$expected)) })`);
  tables.forEach((table, i) => {
    const { statistic, df, p, ...rest } = tableChiSquare(table);
    expectRelative(statistic!, values[4 * i]!, 1e-11, "statistic");
    expect(df).toBe(values[4 * i + 1]);
    expectRelative(p!, values[4 * i + 2]!, 1e-10, "p");
    expectRelative((rest as { smallestExpected: number }).smallestExpected, values[4 * i + 3]!, 1e-12, "expected");
  });
});

it("drops empty rows and columns", () => {
  const { statistic, df, p } = tableChiSquare([
    [3, 4],
    [6, 1],
  ]);
  expect(
    tableChiSquare([
      [3, 0, 4],
      [0, 0, 0],
      [6, 0, 1],
    ]),
  ).toMatchObject({ statistic, df, p });
});

it("says when there is nothing to compare", () => {
  expect(
    tableChiSquare([
      [3, 4],
      [0, 0],
    ]),
  ).toMatchObject({ p: null, df: 0, because: "all cases are in one row" });
  expect(
    tableChiSquare([
      [3, 0],
      [4, 0],
    ]),
  ).toMatchObject({ p: null, because: "all cases are in one column" });
});
