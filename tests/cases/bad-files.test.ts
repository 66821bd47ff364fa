// What is no sheet is refused with the reason and what to do, in bounded time and memory.
import { zipSync } from "fflate";
import { writeOds, writeXlsx } from "hucre";
import { expect, test } from "vitest";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { checkArchiveSize } from "../../src/cases/reading/archive-size.js";
import { rawRows } from "./sheet-of.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const hex = (digits: string): Uint8Array => Uint8Array.from(digits.match(/../g)!, (pair) => Number.parseInt(pair, 16));
const message = async (data: Uint8Array, file: string): Promise<string> => {
  try {
    readCases(await readSheet(data, file));
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error("read without an error");
};

test.each([
  ["an empty file", new Uint8Array(), "a.csv: is empty; expected a sheet with a heading row and cases"],
  ["only blank lines", bytes("\n \n,,\n"), "a.csv: holds no text; expected a heading row and cases"],
  ["only a heading", bytes("ID,Grade,Success\n"), "a.csv: holds no cases; expected a heading row and one row a case"],
  [
    "a document",
    bytes("%PDF-1.7 ..."),
    "a.csv: is a PDF document; copy its table into a sheet, or save the sheet it came from as .xlsx or .csv",
  ],
  [
    "a picture",
    hex("89504e470d0a1a0a"),
    "a.csv: is a picture; type the table into a sheet and save it as .xlsx or .csv",
  ],
  [
    "a web page",
    bytes("<!DOCTYPE html><html><table>"),
    "a.csv: is a web page or XML, not a sheet; open it and save it as .xlsx or .csv",
  ],
  [
    "binary data",
    Uint8Array.from([1, 2, 0, 0, 7, 8, 0, 9]),
    "a.csv: is not text and not a workbook; expected .csv, .tsv, .xlsx or .ods",
  ],
  ["an old workbook", hex("d0cf11e0a1b11ae10000"), "a.csv: is in the old .xls format; open it and save it as .xlsx"],
])("refuses %s", async (_, data, expected) => {
  expect(await message(data, "folder/a.csv")).toBe(expected);
});

test("refuses a workbook with a password", async () => {
  const locked = await writeXlsx({
    sheets: [{ name: "S", rows: [["ID"], ["H1"]] }],
    encryption: { password: "secret", spinCount: 1000 },
  });
  expect(await message(locked, "a.xlsx")).toBe(
    "a.xlsx: is protected by a password; open it, remove the password and save it again",
  );
});

test("refuses a workbook cut short at any length, and one that is another archive", async () => {
  const whole = await writeXlsx({
    sheets: [
      {
        name: "S",
        rows: [
          ["ID", "Grade"],
          ["H1", "II"],
        ],
      },
    ],
  });
  for (const share of [0.05, 0.3, 0.6, 0.95])
    expect(await message(whole.slice(0, Math.round(whole.length * share)), "a.xlsx")).toMatch(
      /^a\.xlsx: (is damaged or cut short|cannot be opened as a workbook)/,
    );
  expect(await message(zipSync({ "letter.txt": bytes("hello") }), "a.xlsx")).toMatch(
    /^a\.xlsx: cannot be opened as a workbook/,
  );
});

test("refuses an empty workbook and an absent sheet by name", async () => {
  expect(await message(await writeXlsx({ sheets: [{ name: "Leer", rows: [] }] }), "a.xlsx")).toBe(
    'a.xlsx: sheet "Leer" is empty; expected a heading row and cases',
  );
  const two = await writeXlsx({ sheets: [{ name: "Cases", rows: [["ID"], ["H1"]] }] });
  await expect(readSheet(two, "a.xlsx", { sheet: "Old" })).rejects.toThrow(
    'a.xlsx: has no sheet "Old"; its sheets are "Cases"',
  );
  await expect(readSheet(bytes("ID\nH1\n"), "a.csv", { sheet: "Old" })).rejects.toThrow(RangeError);
});

test("stops unpacking at the limit, whatever size the archive claims", async () => {
  const bomb = zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(300 * 2 ** 20) }, { level: 6 });
  expect(bomb.length).toBeLessThan(2 ** 20);
  // The sizes written in the archive are made small: what counts is what comes out.
  const view = new DataView(bomb.buffer);
  for (let at = 0; at < bomb.length - 4; at++)
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 1000, true);
  const before = process.memoryUsage().rss;
  expect(() => checkArchiveSize(bomb, "a.xlsx")).toThrow(
    "a.xlsx: unpacks to more than 256 MB, which no case sheet does; not opened",
  );
  expect(process.memoryUsage().rss - before).toBeLessThan(200 * 2 ** 20);
  expect(await message(bomb, "a.xlsx")).toMatch(/unpacks to more than 256 MB/);
});

test("tells a file by its content, not by its name", async () => {
  const workbook = await writeXlsx({
    sheets: [
      {
        name: "S",
        rows: [
          ["ID", "Grade"],
          ["H1", "II"],
          ["H2", "III"],
        ],
      },
    ],
  });
  expect(readCases(await readSheet(workbook, "cases.csv")).cases).toHaveLength(2);
  expect(readCases(await readSheet(bytes("ID;Grade\nH1;II\n"), "cases.xlsx")).cases).toHaveLength(1);
  const open = await writeOds({
    sheets: [
      {
        name: "S",
        rows: [
          ["ID", "Grade"],
          ["H1", "II"],
          ["H2", "3"],
        ],
      },
    ],
  });
  expect(readCases(await readSheet(open, "cases.ods")).cases).toHaveLength(2);
});

test("reads an unclosed quotation mark as text and says so", async () => {
  const table = readCases(await readSheet(bytes('ID,Grade,Note\nH1,II,"5 mm pin\nH2,III,fine\nH3,II,fine\n'), "a.csv"));
  expect(table.cases).toHaveLength(3);
  expect(table.questions.map(({ asks }) => asks)).toContain(
    "a quotation mark opened in row 2 is never closed; quotation marks were read as text",
  );
});

test("keeps cell types, percentages, errors and comments of a workbook", async () => {
  const sheet = await rawRows(
    [
      ["ID", "Share", "Date", "Sum"],
      ["H1", 0.45, new Date("2021-04-03"), null],
    ],
    {
      cells: new Map([
        ["1,1", { value: 0.45, type: "number", style: { numFmt: "0%" }, comment: { text: "measured twice" } }],
        ["1,3", { value: "#REF!", type: "error" }],
      ]),
    },
  );
  expect(sheet.rows[1]!.cells).toEqual([
    { text: "H1" },
    { text: "45%", number: 0.45, comment: "measured twice" },
    { text: "2021-04-03", date: "2021-04-03" },
    { text: "#REF!", error: true },
  ]);
});
