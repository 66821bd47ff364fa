/** Counts by row and column; every row has the same number of columns. */
export type Contingency = readonly (readonly number[])[];

/** Throws unless the table has a row and a column, equally long rows, whole counts of at least 0, and a case in it. */
export function requireContingency(caller: string, table: Contingency): void {
  const columns = table[0]?.length ?? 0;
  if (columns === 0) throw new RangeError(`${caller}: table must have at least one row and one column`);
  let total = 0;
  table.forEach((row, i) => {
    if (row.length !== columns)
      throw new RangeError(
        `${caller}: table[${i}] must have ${columns} columns as the first row has, got ${row.length}`,
      );
    row.forEach((count, j) => {
      if (!(Number.isSafeInteger(count) && count >= 0))
        throw new RangeError(`${caller}: table[${i}][${j}] must be an integer of at least 0, got ${count}`);
      total += count;
    });
  });
  if (total === 0) throw new RangeError(`${caller}: table must hold at least one case, got 0 in every cell`);
  if (!Number.isSafeInteger(total))
    throw new RangeError(`${caller}: table must hold fewer than 2^53 cases, got ${total}`);
}

/** Sums of the rows. */
export function rowSums(table: Contingency): number[] {
  return table.map((row) => row.reduce((sum, count) => sum + count, 0));
}

/** Sums of the columns. */
export function columnSums(table: Contingency): number[] {
  return table[0]!.map((_, j) => table.reduce((sum, row) => sum + row[j]!, 0));
}

/** The table without its empty rows and columns. */
export function withoutEmpty(table: Contingency): number[][] {
  const rows = rowSums(table);
  const columns = columnSums(table);
  return table.filter((_, i) => rows[i]! > 0).map((row) => row.filter((_, j) => columns[j]! > 0));
}

/** Rows become columns. */
export function transposed(table: Contingency): number[][] {
  return table[0]!.map((_, j) => table.map((row) => row[j]!));
}
