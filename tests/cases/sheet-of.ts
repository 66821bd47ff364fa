import { writeXlsx, type WriteSheet } from "hucre";
import { readCases, type ReadCasesOptions } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import type { CaseTable, Question, RawSheet, Value } from "../../src/cases/types.js";

type Row = NonNullable<WriteSheet["rows"]>[number];

/** A text file with these contents, read and understood. */
export async function ofText(text: string | Uint8Array, options?: ReadCasesOptions): Promise<CaseTable> {
  return readCases(await rawText(text), options);
}

export function rawText(text: string | Uint8Array): Promise<RawSheet> {
  return readSheet(typeof text === "string" ? new TextEncoder().encode(text) : text, "invented.csv");
}

/** A workbook made by a general library from these rows, read and understood. */
export async function ofRows(
  rows: Row[],
  more: Partial<WriteSheet> = {},
  options?: ReadCasesOptions,
): Promise<CaseTable> {
  return readCases(await rawRows(rows, more), options);
}

export async function rawRows(rows: Row[], more: Partial<WriteSheet> = {}): Promise<RawSheet> {
  return readSheet(await writeXlsx({ sheets: [{ name: "Cases", rows, ...more }] }), "invented.xlsx");
}

/** Text cells of a comma-separated text, for a workbook with the same cells. */
export function gridOf(text: string, separator = ","): Row[] {
  return text
    .trimEnd()
    .split("\n")
    .map((line) => line.split(separator).map((cell) => (cell === "" ? null : cell)));
}

export function column(table: CaseTable, name: string): Value[] {
  const k = table.columns.findIndex((each) => each.name === name);
  if (k < 0) throw new RangeError(`no column "${name}" in ${table.columns.map((each) => each.name).join(", ")}`);
  return table.cases.map(({ values }) => values[k]!);
}

/** Questions of one column as "text: rows", for a look at all of them at once. */
export function asked(table: CaseTable, name: string): string[] {
  return table.questions
    .filter((question) => question.column === name)
    .map(({ text, rows }) => `${text}: ${rows.join(" ")}`);
}

export function question(table: CaseTable, text: string): Question {
  const found = table.questions.find((each) => each.text === text);
  if (!found)
    throw new RangeError(`no question about "${text}"; asked: ${table.questions.map((each) => each.text).join(", ")}`);
  return found;
}
