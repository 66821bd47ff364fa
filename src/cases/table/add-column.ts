import { movedLine } from "./moved-line.js";
import type { RawSheet } from "../types.js";
import type { FoundTable, Line } from "./find-table.js";

/** A sheet and its table, together. */
export interface SheetTable {
  readonly sheet: RawSheet;
  readonly found: FoundTable;
}

/** The table with one more column on its right, made of the others; the file itself is not changed. */
export function addColumn({ sheet, found }: SheetTable, name: string, textOf: (line: Line) => string): SheetTable {
  const at = found.names.length;
  const lines = found.lines.map((line): Line => {
    const { row, texts } = overflowing(line, at, at + 1);
    const text = textOf(line);
    const cells = [...row.cells];
    const said = [...texts];
    cells[at] = { text };
    for (let c = said.length; c < at; c++) said[c] = "";
    said[at] = text;
    return { row: { ...row, cells }, texts: said };
  });
  const byNumber = new Map(lines.map(({ row }) => [row.number, row]));
  const rows = sheet.rows.map((row) => byNumber.get(row.number) ?? row);
  return { sheet: { ...sheet, rows }, found: { ...found, names: [...found.names, name], lines } };
}

/** Cells right of the last name go right of the last name to come. */
export function overflowing(line: Line, at: number, width: number): Line {
  if (line.texts.length <= at) return line;
  return movedLine(
    line,
    line.texts.map((_, c) => [c, c < at ? c : c - at + width] as const),
  );
}
