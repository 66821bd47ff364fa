import { movedLine } from "./moved-line.js";
import type { RawCell, RawRow, RawSheet } from "../types.js";
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
  // Two cases side by side in one row have a line each: the row has the new cell of both.
  const byNumber = new Map<number, RawRow>();
  for (const { row } of lines) {
    const first = byNumber.get(row.number);
    byNumber.set(row.number, first ? { ...first, cells: [...first.cells, { text: "" }] } : row);
  }
  const given = new Map(sheet.rows.map((row) => [row.number, row.cells.length]));
  const rows = sheet.rows.map((row): RawRow => {
    const made = byNumber.get(row.number);
    return made ? { ...made, cells: padded(made.cells, given.get(row.number)! + 1) } : row;
  });
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

/** Cells of a row that are at least as many as the file has. */
function padded(cells: readonly RawCell[], fewest: number): RawCell[] {
  return Array.from({ length: Math.max(cells.length, fewest) }, (_, c) => cells[c] ?? { text: "" });
}
