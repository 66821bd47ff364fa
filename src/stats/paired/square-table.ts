/** Throws unless the table is square, of at least two categories, and holds counts, at least one of them above 0. */
export function requireSquareTable(caller: string, table: readonly (readonly number[])[]): void {
  if (table.length < 2)
    throw new RangeError(`${caller}: the table must have at least 2 categories, got ${table.length}`);
  table.forEach((row, i) => {
    if (row.length !== table.length)
      throw new RangeError(
        `${caller}: row ${i + 1} must have ${table.length} cells as there are rows, got ${row.length}`,
      );
    row.forEach((count, j) => {
      if (!(Number.isSafeInteger(count) && count >= 0))
        throw new RangeError(`${caller}: row ${i + 1}, column ${j + 1} must be an integer of at least 0, got ${count}`);
    });
  });
  if (table.every((row) => row.every((count) => count === 0)))
    throw new RangeError(`${caller}: there must be at least one pair, got 0`);
}

/** What leaves a test of change undefined. */
export const noChange = "every pair has the same category twice";
