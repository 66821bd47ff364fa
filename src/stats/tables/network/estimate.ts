import { columnSums, rowSums, transposed, type Contingency } from "../contingency.js";

/** Node numbers held in memory at most, over all stages: 128 MB. */
const MOST_KEYS = 2 ** 25;
/** Ways to fill one column at most. */
const MOST_WAYS = 2 ** 21;

/**
 * Least number of steps that the network of a table takes, or Infinity when it would not fit into memory: nodes by
 * counting what can be left of the rows, columns by counting the ways to fill one from an average node. Paths come on
 * top, so a table that passes may still turn out too large.
 */
export function estimateWork(table: Contingency): number {
  const upright = table.length > table[0]!.length ? transposed(table) : table;
  const rows = rowSums(upright).toSorted((x, y) => x - y);
  const columns = columnSums(upright).toSorted((x, y) => y - x);
  const total = rows.reduce((sum, row) => sum + row, 0);
  const keys = rows.slice(0, -1).reduce((product, sum) => product * (sum + 1), 1);
  if (keys * (columns.length - 1) > MOST_KEYS) return Infinity;
  if (waysToFill(rows, columns[0]!) > MOST_WAYS) return Infinity;

  const orders = rows.reduce((product, _, i) => product * (i + 1), 1);
  let left = total;
  let work = 0;
  for (const column of columns.slice(0, -1)) {
    const nodes = Math.max(1, waysToFill(rows, left) / orders);
    const average = rows.map((row) => Math.round((row * left) / total));
    work +=
      nodes *
      Math.max(
        1,
        waysToFill(
          average,
          Math.min(
            column,
            average.reduce((sum, row) => sum + row, 0),
          ),
        ),
      );
    left -= column;
  }
  return work;
}

/** Number of ways to take `column` cases from rows of these sizes. */
export function waysToFill(rows: ArrayLike<number>, column: number): number {
  let ways = new Float64Array(column + 1);
  ways[0] = 1;
  for (let i = 0; i < rows.length; i++) {
    const next = new Float64Array(column + 1);
    // A running sum over the last rows[i] + 1 entries.
    for (let taken = 0, window = 0; taken <= column; taken++) {
      window += ways[taken]! - (taken > rows[i]! ? ways[taken - rows[i]! - 1]! : 0);
      next[taken] = window;
    }
    ways = next;
  }
  return ways[column]!;
}
