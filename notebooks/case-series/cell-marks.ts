import { cellMap, type CellFate } from "../../src/cases/cell-map.js";
import type { CaseTable, RawSheet } from "../../src/cases/types.js";

export const marks = ["read", "asked", "setAside"] as const;
export type Mark = (typeof marks)[number];

/** The marks of a sheet, one a cell, or one a block of cells where the sheet is large. */
export interface CellMarks {
  /** Top to bottom, left to right; a short row has fewer. */
  readonly rows: readonly { readonly first: number; readonly marks: readonly Mark[] }[];
  /** How many rows and columns one mark stands for. */
  readonly block: { readonly rows: number; readonly columns: number };
  /** Cells, not marks; the three add to all cells of the file. */
  readonly counts: Readonly<Record<Mark, number>>;
}

const most = { rows: 300, columns: 40 };
const markOf: Readonly<Record<CellFate, Mark>> = {
  read: "read",
  recoded: "read",
  missing: "read",
  asked: "asked",
  withheld: "setAside",
  setAside: "setAside",
};

/** What became of every cell of a sheet. Headings, identifiers and lines that are no cases are set aside. */
export function cellMarks(sheet: RawSheet, table: CaseTable): CellMarks {
  const fates = new Map(cellMap(table).rows.map(({ row, fates: of }) => [row, of]));
  const columnAt = new Map(table.columns.map(({ position }, k) => [position, k]));
  const counts = { read: 0, asked: 0, setAside: 0 };
  const rows = sheet.rows.map(({ number, cells }) => ({
    first: number,
    marks: cells.map((_, c): Mark => {
      const k = columnAt.get(c + 1);
      const fate = k === undefined ? undefined : fates.get(number)?.[k];
      const mark = fate === undefined ? "setAside" : markOf[fate];
      counts[mark]++;
      return mark;
    }),
  }));
  const widest = rows.reduce((width, row) => Math.max(width, row.marks.length), 0);
  const block = { rows: Math.ceil(rows.length / most.rows) || 1, columns: Math.ceil(widest / most.columns) || 1 };
  return { rows: block.rows * block.columns === 1 ? rows : merged(rows, block), block, counts };
}

/** A block is asked about when one of its cells is, read when one is, else set aside. */
function merged(rows: CellMarks["rows"], block: CellMarks["block"]): CellMarks["rows"] {
  const out: { first: number; marks: Mark[] }[] = [];
  for (const [r, { first, marks: row }] of rows.entries()) {
    if (r % block.rows === 0) out.push({ first, marks: [] });
    const into = out.at(-1)!.marks;
    for (const [c, mark] of row.entries()) {
      const at = Math.floor(c / block.columns);
      const held = into[at];
      if (held === undefined || mark === "asked" || (mark === "read" && held === "setAside")) into[at] = mark;
    }
  }
  return out;
}
