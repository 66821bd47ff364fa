// A workbook with one sheet a year: the same heading, other columns, numbers that start again. All content invented.
import { writeXlsx, type WriteSheet } from "hucre";
import { expect, test } from "vitest";
import { inspection, inspectionText } from "../../src/cases/inspection.js";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { showValue } from "../../src/cases/show-value.js";
import type { CaseTable } from "../../src/cases/types.js";
import { asked, column } from "./sheet-of.js";

const first: WriteSheet = {
  name: "2019",
  rows: [
    ["Shoulder series 2019"],
    ["ID", "Side", "Grade", "Technique", "Success"],
    [1, "L", "II", "closed", "Y"],
    [2, "R", "III", "closed", "N"],
    [3, "R", "III", "open", "Y"],
    ["Total", null, null, null, 2],
  ],
};
const second: WriteSheet = {
  name: "2020",
  rows: [
    ["ID", "Grade", "Side", "Technique", "Success", "Elev"],
    [1, "IV", "R", "open", "N", 120],
    [2, "II", "L", "?", "Y", 170],
  ],
};
const codes: WriteSheet = {
  name: "Codes",
  rows: [
    ["closed", "no cut"],
    ["open", "a cut"],
  ],
};

async function read(sheets: WriteSheet[], answers: Record<string, string> = {}): Promise<CaseTable> {
  return readCases(await readSheet(await writeXlsx({ sheets }), "series.xlsx"), { answers });
}
const stack = { "sheets with the same heading": "all of them, one under the other" };

test("sheets with the heading of the one read are asked about apart from the others", async () => {
  const table = await read([first, second, codes]);
  expect(table.cases).toHaveLength(3);
  expect(
    table.questions.filter(({ id }) => /sheet/.test(id)).map(({ id, text, choices }) => [id, text, choices]),
  ).toEqual([
    ["sheets with the same heading", "2020", ["only this sheet", "all of them, one under the other"]],
    ["other sheets", "Codes", ["only this sheet", "the sheets will be joined into one"]],
  ]);
  const alone = await read([first, second, codes], { "sheets with the same heading": "only this sheet" });
  expect(alone.questions.map(({ id }) => id)).not.toContain("sheets with the same heading");
  expect(alone.cases).toHaveLength(3);
});

test("on an answer all sheets are read as one table, columns by name, each row with its sheet", async () => {
  const table = await read([first, second, codes], stack);
  expect(table.columns.map(({ name }) => name)).toEqual([
    "ID",
    "Side",
    "Grade",
    "Technique",
    "Success",
    "Sheet",
    "Elev",
  ]);
  expect(column(table, "Sheet").map(showValue)).toEqual(["2019", "2019", "2019", "2020", "2020"]);
  expect(column(table, "Side").map(showValue)).toEqual(["left", "right", "right", "right", "left"]);
  expect(column(table, "Grade").map(showValue)).toEqual(["II", "III", "III", "IV", "II"]);
  expect(column(table, "Elev").map(showValue)).toEqual(["blank", "blank", "blank", "120", "170"]);
  expect(table.sheets).toEqual([
    { name: "2019", first: 1, last: 6 },
    { name: "2020", first: 7, last: 9 },
  ]);
  expect(table.cases.map(({ row }) => row)).toEqual([3, 4, 5, 8, 9]);
  expect(table.setAside.map(({ row, why }) => [row, why])).toEqual([
    [1, "title or note above the heading"],
    [6, "total or average, not a case"],
    [7, "heading of a further sheet"],
  ]);
  expect(asked(table, "Technique")).toEqual(["?: 9"]);
  expect(inspection(table)).toMatchObject({ sheets: table.sheets });
  expect(inspectionText(table)).toContain('row 3 of sheet "2020"');
  const { understood, asked: open, setAside } = table.cells;
  expect(understood + open + setAside).toBe(6 * 5 + 3 + 3 * 6 + 2);
});

test("numbers that start again in each sheet are other children until somebody says they are the same", async () => {
  const table = await read([first, second], stack);
  expect(table.cases.map(({ id }) => id)).toEqual(["1 (2019)", "2 (2019)", "3 (2019)", "1 (2020)", "2 (2020)"]);
  expect(table.questions.map(({ id }) => id)).toContain("numbers over sheets");
  const same = await read([first, second], { ...stack, "numbers over sheets": "equal numbers are the same child" });
  expect(new Set(same.cases.map(({ child }) => child)).size).toBe(3);
  const other = await read(
    [first, { ...second, rows: second.rows!.map((row, i) => (i > 0 ? [`K${i}`, ...row.slice(1)] : row)) }],
    stack,
  );
  expect(other.cases.map(({ id }) => id)).toEqual(["1", "2", "3", "K1", "K2"]);
  expect(other.questions.map(({ id }) => id)).not.toContain("numbers over sheets");
});

test("a name of a surgeon that names a sheet is withheld", async () => {
  const table = await read([
    { ...first, name: "Dr Zorvia" },
    { ...second, name: "Dr Quell" },
  ]);
  expect(JSON.stringify(table)).not.toMatch(/zorvia|quell/i);
  const both = await read(
    [
      { ...first, name: "Dr Zorvia" },
      { ...second, name: "Dr Quell" },
    ],
    stack,
  );
  expect(JSON.stringify(both)).not.toMatch(/zorvia|quell/i);
  expect(column(both, "Sheet").map(showValue)).toEqual([
    "Surgeon A",
    "Surgeon A",
    "Surgeon A",
    "Surgeon B",
    "Surgeon B",
  ]);
});
