import { describe, expect, it, test } from "vitest";
import { checkText } from "../../../src/claims/check-text.js";
import { tableGrids } from "../../../src/claims/tables/table-grids.js";

/** Invented tables. Each sum can be redone by hand. */
type Table = readonly (readonly string[])[];
const asTabs = (table: Table): string => table.map((row) => row.join("\t")).join("\n");
const asHtml = (table: Table): string =>
  `<table class="MsoTable">\n${table.map((row) => `<tr>${row.map((cell) => `<td><p>${cell}</p></td>`).join("\n")}</tr>`).join("\n")}</table>`;
const failing = (text: string) =>
  checkText(text).claims.filter((claim) => [claim.arithmetic, claim.unit, claim.conclusion].includes("fails"));

const outcomes = [
  ["Outcome, n (%)", "Closed (n = 40)", "Open (n = 12)"],
  ["Success", "34 (85)", "9 (75)"],
  ["Conversion", "4 (10)", "0 (0)"],
  ["Age (years), mean (SD)", "13 (2)", "14 (1)"],
];
const grades = [
  ["Grade", "Closed", "Open", "Total"],
  ["I", "12", "1", "13"],
  ["II", "15", "2", "17"],
  ["III", "9", "4", "13"],
  ["IV", "4", "5", "9"],
  ["Total", "40", "12", "52"],
];
const fractions = [
  ["Grade", "Success, n/N"],
  ["I", "12/13"],
  ["II", "15/17"],
  ["III", "10/13"],
  ["Total", "37/43"],
];
const others = [
  // Percentages of a subgroup, of a row, of known cases, several reasons for one child.
  [["n (%)", "Closed (n = 40)"], ["Complications", "8 (20)"], ["Pin track infection", "2 (25)"]],
  [["n (%)", "Closed (n = 40)", "Open (n = 20)"], ["Boys", "30 (75)", "10 (50)"], ["Row share, n (%)", "15 (75)", "5 (25)"]],
  [["n (%)", "Closed (n = 40)"], ["Success", "34 (85)"], ["Hand known, right", "20 (53)"], ["Hand missing", "2 (5)"]],
  [["Complication", "Closed", "Open"], ["Infection", "3", "2"], ["Nerve palsy", "2", "1"], ["Total", "4", "3"]],
  [["Year", "Fractures"], ["2019", "12"], ["2020", "15"], ["Mean", "13.5"]],
  [["Characteristic", "Closed", "Open"], ["Boys", "20", "8"], ["Left", "18", "7"], ["Total", "40", "12"]],
]; // prettier-ignore

const change = (table: Table, row: number, column: number, text: string): Table =>
  table.map((cells, i) => cells.map((cell, j) => (i === row && j === column ? text : cell)));

describe.each([["tabs", asTabs], ["HTML", asHtml]])("a table pasted as %s", (_, paste) => {
  test.each([outcomes, grades, fractions, ...others].map((table) => [paste(table)]))("raises no false alarm: %s", (text) => {
    expect(failing(text)).toEqual([]);
  });

  it.each([
    ["a share of the column's whole", outcomes, 1, 1, "34 (58)", "34 of the 40 in the column's head is 85%, not 58%. Which number is right?"],
    ["more than the whole", outcomes, 1, 2, "19 (75)", "19 of the 12 in the column's head is 158%, not 75%. Which number is right?"],
    ["a column's total", fractions, 4, 1, "38/43", "12 + 15 + 10 = 37, not 38. Which number is right?"],
    ["a column's total of wholes", fractions, 4, 1, "37/44", "13 + 17 + 13 = 43, not 44. Which number is right?"],
  ] as const)("finds a slip in %s", (_slip, table, row, column, cell, because) => {
    const found = failing(paste(change(table, row, column, cell)));
    expect(found.map((claim) => claim.because)).toContain(because);
    expect(found.every((claim) => claim.arithmetic === "fails")).toBe(true);
  });

  it("finds every cell of a cross-table of grades that is off by one, and the one beside it", () => {
    for (let row = 1; row < grades.length; row++)
      for (let column = 1; column < 4; column++)
        for (const step of [-1, 1]) {
          const text = paste(change(grades, row, column, String(Number(grades[row]![column]) + step)));
          expect(failing(text), text).not.toEqual([]);
        }
  });

  it("judges each cell once and places it where it is printed", () => {
    const text = `Table 2.\n\n${paste(outcomes)}`;
    const { claims } = checkText(text);
    for (const claim of claims) expect(text.slice(claim.start, claim.end)).toBe(claim.text);
    expect(claims.filter(({ start }) => start === claims[0]!.start)).toHaveLength(1);
    expect(claims.filter(({ reproducedBy }) => reproducedBy.includes("count over the column's total"))).toHaveLength(4);
  });
}); // prettier-ignore

it("tells that a share of another whole needs its denominator, without failing it", () => {
  const { claims } = checkText(asTabs(others[0]!));
  expect(claims.map(({ arithmetic, because }) => [arithmetic, because])).toContainEqual([
    "cannot be checked",
    "25% is not 2 of the column's 40 (5%), but it is 2 of 8. Please name the denominator.",
  ]);
});

it("ends a table where the width changes, and leaves markup in cells as text", () => {
  expect(tableGrids('<table><tr><td colspan="2">a</td></tr><tr><td>1</td></tr><tr><td>2</td></tr></table>')).toEqual(
    [],
  );
  const [grid] = tableGrids("<table><tr><td>a&lt;b<td>x<script>y</tr><tr><td>1<td>2</tr></table>");
  expect(grid!.map((row) => row.map(({ text }) => text))).toEqual([
    ["a<b", "xy"],
    ["1", "2"],
  ]);
});
