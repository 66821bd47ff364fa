import type { Span } from "../text/token.js";
import { type CellCount, cellCount, namedWhole } from "./cell-values.js";
import type { Grid } from "./table-grids.js";

/** A table whose first row is its head and whose first column holds the labels. */
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

const widest = 30;

/** Reads a grid as head, labels and counts; null when the head holds bare counts, or the table is too wide to be one. */
export function countTable(grid: Grid): CountTable | null {
  const [head, ...body] = grid;
  if (!head || body.length === 0 || head.length > widest) return null;
  const heads = head.slice(1);
  if (heads.some(({ text }) => cellCount(text) !== null)) return null;
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
