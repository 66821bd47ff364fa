// The sheet step without a page: what is drawn, what can be taken back, which file was dropped.
import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { cellMarks, marks } from "../../notebooks/case-series/cell-marks.js";
import { edited, redone, undone, untouched } from "../../notebooks/case-series/edit-history.js";
import { jsonKind } from "../../notebooks/case-series/json-kind.js";
import { logTable } from "../../notebooks/case-series/log-table.js";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import type { CaseTable, RawSheet } from "../../src/cases/types.js";

const read = async (csv: string | Uint8Array): Promise<{ sheet: RawSheet; table: CaseTable }> => {
  const sheet = await readSheet(typeof csv === "string" ? new TextEncoder().encode(csv) : csv, "invented.csv");
  return { sheet, table: readCases(sheet) };
};
const file = (name: string): Uint8Array => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
const small = "ID,Name,Grade,Success,Note\nH1,Ann Zorvia,II,yes,seen by Zorvia\nH2,Bo Quell,3-4,x,\nTotal,,,1\n";

describe("the map of the cells", () => {
  it("has one mark a cell: headings, identifiers and lines that are no cases set aside", async () => {
    const { sheet, table } = await read(small);
    const letters = cellMarks(sheet, table).rows.map(({ marks: row }) => row.map((mark) => mark[0]).join(""));
    expect(letters).toEqual(["sssss", "rsrrr", "rsaar", "ssss"]);
  });
  it.each(["cohort.csv", "cohort-as-kept.csv"])("counts every cell of %s once, as inspect does", async (name) => {
    const { sheet, table } = await read(file(name));
    const { counts, rows } = cellMarks(sheet, table);
    expect(counts).toEqual({
      read: table.cells.understood,
      asked: table.cells.asked,
      setAside: table.cells.setAside,
    });
    const drawn = rows.flatMap((row) => row.marks);
    expect(drawn).toHaveLength(sheet.rows.reduce((sum, row) => sum + row.cells.length, 0));
    for (const mark of marks) expect(drawn.filter((one) => one === mark)).toHaveLength(counts[mark]);
  });
  it("merges a large sheet and keeps what is asked in sight", async () => {
    const lines = Array.from({ length: 900 }, (_, i) => `H${i},II,${i === 500 ? "x" : "yes"}`);
    const { sheet, table } = await read(`ID,Grade,Success\n${lines.join("\n")}\n`);
    const map = cellMarks(sheet, table);
    expect(map.block).toEqual({ rows: 4, columns: 1 });
    expect(map.rows).toHaveLength(226);
    expect(map.rows.flatMap((row, i) => (row.marks.includes("asked") ? [[i, row.first]] : []))).toEqual([[125, 501]]);
    expect(map.counts).toEqual({ read: 2699, asked: 1, setAside: 3 });
  });
});

test("the log lists what was recoded and set aside, and no identifier", async () => {
  const { table } = await read(small);
  const { rows } = logTable(table);
  expect(rows).toContainEqual(["4", "", expect.stringContaining("Total"), "set aside", expect.any(String)]);
  expect(rows.length).toBe(table.log.length + table.setAside.length);
  expect(JSON.stringify(rows)).not.toMatch(/zorvia|quell/i);
});

test("answers and meanings are taken back and taken again, and a new one ends what was taken back", () => {
  const one = edited(untouched, { answers: { a: "yes" }, roles: {} });
  const two = edited(one, { answers: { a: "yes" }, roles: { B: "grade" } });
  expect(undone(two).now).toEqual(one.now);
  expect(undone(undone(two)).now).toEqual(untouched.now);
  expect(undone(untouched)).toEqual(untouched);
  expect(redone(undone(two))).toEqual(two);
  expect(redone(two)).toEqual(two);
  const other = edited(undone(two), { answers: {}, roles: {} });
  expect(redone(other).now).toEqual({ answers: {}, roles: {} });
});

test("a plan is told from answers by what it says", () => {
  expect(jsonKind(new TextDecoder().decode(file("cohort-plan.json")), "x.json")).toBe("plan");
  expect(jsonKind('\uFEFF{"Grade | grade | 3-4": "grade IV"}', "x.json")).toBe("answers");
  expect(() => jsonKind("{", "x.json")).toThrow("x.json: is not JSON; expected a plan or answers");
});
