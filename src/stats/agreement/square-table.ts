/** A square table of counts: rows are the first rater's grades, columns the second's. */
export type SquareTable = readonly (readonly number[])[];

/** The sums that every agreement coefficient starts from. */
export interface TableMargins {
  readonly n: number;
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/**
 * Margins of a square table of counts, after checking it.
 *
 * @throws RangeError unless the table is square, holds non-negative integers and counts at least one radiograph
 * @example tableMargins("kappa", [[2, 1], [0, 3]]) // => { n: 6, rows: [3, 3], columns: [2, 4] }
 */
export function tableMargins(caller: string, table: SquareTable): TableMargins {
  const size = table.length;
  if (size === 0) throw new RangeError(`${caller}: the table must have at least one row`);
  table.forEach((row, i) => {
    if (row.length !== size)
      throw new RangeError(
        `${caller}: the table must be square (${size} rows), row ${i + 1} has ${row.length} columns`,
      );
    row.forEach((count, j) => {
      if (!(Number.isSafeInteger(count) && count >= 0))
        throw new RangeError(`${caller}: row ${i + 1}, column ${j + 1} must be a count of at least 0, got ${count}`);
    });
  });
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columns = rows.map((_, j) => table.reduce((sum, row) => sum + row[j]!, 0));
  const n = rows.reduce((sum, count) => sum + count, 0);
  if (n === 0) throw new RangeError(`${caller}: the table must count at least one radiograph, got none`);
  return { n, rows, columns };
}
