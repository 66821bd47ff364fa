import { InputError } from "../input-error.js";

/**
 * Rows of counts from text such as "9 0; 15 1; 12 3": rows parted by semicolons, counts by spaces.
 * @throws InputError naming the row, the column and the rule
 */
export function readRows(caller: string, text: string, columns?: number): number[][] {
  if (text.trim() === "")
    throw new InputError(`${caller}: there must be at least one row of counts, got an empty text`);
  const rows = text.split(";").map((row, i) => readRow(caller, row, i));
  const expected = columns ?? rows[0]!.length;
  rows.forEach((row, i) => {
    if (row.length !== expected)
      throw new InputError(
        `${caller}: row ${i + 1}: must have ${expected} counts${columns === undefined ? " as row 1 has" : ""}, got ${row.length}`,
      );
  });
  return rows;
}

function readRow(caller: string, row: string, i: number): number[] {
  const cells = row.trim().split(/\s+/);
  if (cells[0] === "") throw new InputError(`${caller}: row ${i + 1}: must hold counts, got nothing`);
  return cells.map((cell, j) => {
    const count = /^\d+$/.test(cell) ? Number(cell) : NaN;
    if (!Number.isSafeInteger(count))
      throw new InputError(
        `${caller}: row ${i + 1}, column ${j + 1}: a count must be a whole number of at least 0, got "${cell}"`,
      );
    return count;
  });
}
