import { describe, expect, it } from "vitest";
import { checkText } from "../../../src/claims/check-text.js";
import { tableGrids } from "../../../src/claims/tables/table-grids.js";

/** Invented tables. Each sum can be redone by hand. */
const failing = (text: string) =>
  checkText(text)
    .claims.filter((claim) => [claim.arithmetic, claim.unit, claim.conclusion].includes("fails"))
    .map(({ because }) => because);
const html = (body: string): string => `<table><tbody>${body}</tbody></table>`;
const row = (...cells: readonly string[]): string => `<tr>${cells.join("")}</tr>`;
const cell = (text: string, merging = ""): string => `<td${merging}>${text}</td>`;

const twoHeads = (conversion: string): string =>
  html(
    row(cell("", ' rowspan="2"'), cell("Treatment", ' colspan="2"')) +
      row(cell("Closed (n = 40), n (%)"), cell("Open (n = 12), n (%)")) +
      row(cell("Outcome", ' colspan="3"')) +
      row(cell("Success"), cell("34 (85)"), cell("9 (75)")) +
      row(cell("Conversion"), cell(conversion), cell("0 (0)")),
  );
const grades = (second: string): string =>
  html(
    row(cell("Grade"), cell("Fractures", ' colspan="3"')) +
      row(cell(""), cell("Closed"), cell("Open"), cell("Total")) +
      row(cell("I"), cell("12"), cell("1"), cell("13")) +
      row(cell("II"), cell(second), cell("2"), cell("17")) +
      row(cell("III"), cell("9"), cell("4"), cell("13")) +
      row(cell("IV"), cell("4"), cell("5"), cell("9")) +
      row(cell("Total"), cell("40"), cell("12"), cell("52")),
  );
const byTotals = (cellText: string): string =>
  [
    ["Grade, n (%)", "Closed", "Open"],
    ["I", "12 (30)", "1 (8)"],
    ["II", cellText, "2 (17)"],
    ["III", "9 (23)", "4 (33)"],
    ["IV", "4 (10)", "5 (42)"],
    ["Total", "40", "12"],
  ]
    .map((cells) => cells.join("\t"))
    .join("\n");

describe("tables with merged cells and several head rows", () => {
  it("lays merged words out over the places they cover, and leaves a merged number in one", () => {
    const [grid] = tableGrids(twoHeads("4 (10)"));
    expect(grid!.map((cells) => cells.map(({ text }) => text))).toEqual([
      ["", "Treatment", "Treatment"],
      ["", "Closed (n = 40), n (%)", "Open (n = 12), n (%)"],
      ["Outcome", "Outcome", "Outcome"],
      ["Success", "34 (85)", "9 (75)"],
      ["Conversion", "4 (10)", "0 (0)"],
    ]);
    const [numbers] = tableGrids(html(row(cell("a"), cell("7", " colspan=2")) + row(cell("b"), cell("1"), cell("2"))));
    expect(numbers![0]!.map(({ text }) => text)).toEqual(["a", "7", ""]);
  });

  it("finds a slip under two rows of heads and says nothing of a sound table", () => {
    expect(failing(twoHeads("4 (10)"))).toEqual([]);
    expect(failing(twoHeads("4 (14)"))).toEqual([
      "4 of the 40 in the column's head is 10%, not 14%. Which number is right?",
    ]);
    expect(failing(grades("15"))).toEqual([]);
    expect(failing(grades("16"))).not.toEqual([]);
  });

  it("sets percentages against the Total row when no head names a whole", () => {
    expect(failing(byTotals("15 (38)"))).toEqual([]);
    expect(failing(byTotals("15 (58)"))).toEqual([
      "The other percentages of the table go by its totals: 15 of 40 is 38%, not 58%. Which number is right?",
    ]);
  });

  it("reads a table of sixty columns", () => {
    const names = Array.from({ length: 60 }, (_, i) => `Centre ${i + 1} (n = 40)`);
    const wide = (slip: string): string =>
      [
        ["n (%)", ...names],
        ["Success", ...names.map((_, i) => (i === 50 ? slip : "34 (85)"))],
      ]
        .map((cells) => cells.join("\t"))
        .join("\n");
    expect(failing(wide("34 (85)"))).toEqual([]);
    expect(failing(wide("34 (58)"))).toHaveLength(1);
  });
});
