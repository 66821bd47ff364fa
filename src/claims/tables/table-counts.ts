import type { Span } from "../text/token.js";
import { type CellCount, cellCount, namedWhole } from "./cell-values.js";
import type { Grid } from "./table-grids.js";

/** A table whose first rows, those above the first count, are its head, and whose first column holds the labels. */
export interface CountTable {
  readonly heads: readonly Span[];
  /** The head of the label column. */
  readonly corner: string;
  readonly labels: readonly Span[];
  /** Body cells without the label column. */
  readonly cells: readonly (readonly Span[])[];
  readonly counts: readonly (readonly (CellCount | null)[])[];
  /** The whole that each column's head names. */
  readonly wholes: readonly (number | null)[];
}

const [widest, deepest] = [200, 4];

/** Reads a grid as head, labels and counts; null when the first row holds bare counts, or the table is too wide to be one. */
export function countTable(grid: Grid): CountTable | null {
  const first = grid.findIndex((row) => row.slice(1).some(({ text }) => cellCount(text) !== null));
  // A table without any bare count keeps its first row as its head.
  const rows = first < 0 ? 1 : first;
  if (rows === 0 || rows > deepest || grid.length <= rows || grid[0]!.length > widest) return null;
  const head = grid[0]!.map((_, column) => together(grid.slice(0, rows).map((row) => row[column]!)));
  const body = grid.slice(rows);
  const heads = head.slice(1);
  const cells = body.map((row) => row.slice(1));
  return {
    heads,
    corner: head[0]!.text,
    labels: body.map((row) => row[0]!),
    cells,
    counts: cells.map((row) => row.map(({ text }) => cellCount(text))),
    wholes: heads.map(({ text }) => namedWhole(text)),
  };
}

/** The lines of a head in one; a merged line that repeats is said once. */
function together(lines: readonly Span[]): Span {
  const texts = [...new Set(lines.map(({ text }) => text).filter((text) => text !== ""))];
  return { ...lines.at(-1)!, text: texts.join(" ") };
}
