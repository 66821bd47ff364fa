import type { RawRow, RawSheet } from "../types.js";

/** A value that stands once in a merged cell and holds for several rows. */
export interface MergedCell {
  /** Zero-based column. */
  readonly column: number;
  readonly rows: readonly number[];
}

/** The sheet with the value of each cell merged downwards below the heading in all of its rows; the file stays as it is. */
export function fillMerged(
  sheet: RawSheet,
  lastHeading: number,
): { readonly sheet: RawSheet; readonly merged: readonly MergedCell[] } {
  const heading = sheet.rows[lastHeading]?.number ?? 0;
  const down = (sheet.merges ?? []).filter(
    ({ top, bottom, left, right }) => top > heading && bottom > top && left === right,
  );
  if (down.length === 0) return { sheet, merged: [] };
  const rows = new Map(sheet.rows.map((row): [number, RawRow] => [row.number, row]));
  const merged: MergedCell[] = [];
  for (const { top, bottom, left } of down) {
    const cell = rows.get(top)?.cells[left - 1];
    if (!cell || cell.text === "") continue;
    const filled: number[] = [];
    for (let number = top + 1; number <= bottom; number++) {
      const row = rows.get(number);
      if (!row || row.cells[left - 1] === undefined || row.cells[left - 1]!.text !== "") continue;
      rows.set(number, { ...row, cells: row.cells.with(left - 1, cell) });
      filled.push(number);
    }
    if (filled.length > 0) merged.push({ column: left - 1, rows: filled });
  }
  return { sheet: { ...sheet, rows: sheet.rows.map(({ number }) => rows.get(number)!) }, merged };
}
