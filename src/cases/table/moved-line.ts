import type { RawCell } from "../types.js";
import type { Line } from "./find-table.js";

/** A line with its cells at other columns. */
export function movedLine({ row, texts }: Line, places: readonly (readonly [number, number])[]): Line {
  const cells: RawCell[] = [];
  const moved: string[] = [];
  for (const [from, to] of places) {
    if (row.cells[from] === undefined) continue;
    cells[to] = row.cells[from];
    moved[to] = texts[from] ?? "";
  }
  for (let c = 0; c < moved.length; c++) moved[c] ??= "";
  return { row: { ...row, cells }, texts: moved };
}
