import type { Distinct } from "../values/column-facts.js";
import type { Line } from "./find-table.js";

/** The different cells of one column with their counts, in the order of their first row. */
export function distinctCells(lines: readonly Line[], position: number): Distinct[] {
  const known = new Map<string, { -readonly [K in keyof Distinct]: Distinct[K] }>();
  for (const { row, texts } of lines) {
    const cell = row.cells[position] ?? { text: "" };
    const text = texts[position] ?? "";
    const typed = cell.number !== undefined || cell.date !== undefined || cell.boolean !== undefined;
    const key = typed ? `${text}\u0000` : text;
    const found = known.get(key);
    if (found) found.count++;
    else known.set(key, { text, cell, count: 1 });
  }
  return [...known.values()];
}
