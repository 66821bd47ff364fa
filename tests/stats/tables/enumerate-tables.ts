import { choose, ratio } from "../../exact/rational.js";

/** Exact probability of the tables that are no likelier than the observed one, by writing down every table. */
export function enumeratedP(table: readonly (readonly number[])[]): number {
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columns = table[0]!.map((_, j) => table.reduce((sum, row) => sum + row[j]!, 0));
  // Ways to reach a table: for each column, the product of binomial coefficients of what each row has left.
  const own = waysOf(table, rows);
  let [all, noLikelier] = [0n, 0n];
  const fill = (column: number, left: readonly number[], ways: bigint): void => {
    if (column === columns.length - 1) {
      all += ways;
      // Relative tolerance 1e-7, in whole numbers.
      if (ways * 10_000_000n <= own * 10_000_001n) noLikelier += ways;
      return;
    }
    const take = (row: number, rest: number, taken: readonly number[], product: bigint): void => {
      if (row === left.length) {
        if (rest === 0)
          fill(
            column + 1,
            left.map((count, i) => count - taken[i]!),
            product,
          );
        return;
      }
      for (let count = 0; count <= Math.min(rest, left[row]!); count++)
        take(row + 1, rest - count, [...taken, count], product * choose(left[row]!, count));
    };
    take(0, columns[column]!, [], ways);
  };
  fill(0, rows, 1n);
  return ratio(noLikelier, all);
}

function waysOf(table: readonly (readonly number[])[], rows: readonly number[]): bigint {
  let ways = 1n;
  table.forEach((row, i) => {
    let left = rows[i]!;
    for (const count of row) {
      ways *= choose(left, count);
      left -= count;
    }
  });
  return ways;
}
