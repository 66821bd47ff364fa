import { normalUpper } from "../../numeric/normal.js";
import { columnSums, requireContingency, rowSums, type Contingency } from "./contingency.js";

interface JonckheereTerpstra {
  readonly method: "Jonckheere-Terpstra";
  readonly table: Contingency;
  /** Pairs of cases from different rows in which the later row has the later column; ties count one half. */
  readonly statistic: number;
}

export interface JonckheereTerpstraResult extends JonckheereTerpstra {
  readonly mean: number;
  readonly variance: number;
  /** Positive when later rows tend to later columns. */
  readonly z: number;
  /** Two-sided, in large samples. */
  readonly p: number;
}

export interface NoJonckheereTerpstra extends JonckheereTerpstra {
  readonly z: null;
  readonly p: null;
  readonly because: string;
}

/**
 * Large-sample test for an order: do later rows (grades) tend to later columns (results)? Uses the order of both, no
 * scores; the variance allows for ties.
 *
 * @param table counts; rows are the ordered groups, columns the ordered results
 * @throws RangeError when the table is not one of counts
 * @see Jonckheere 1954, Biometrika 41:133-145; variance with ties as in Kendall 1970, Rank Correlation Methods, 4th ed.,
 *   equation 4.3, a quarter of it
 * @example jonckheereTerpstra([[3, 1, 0], [1, 2, 1], [0, 1, 3]]).statistic // => 40.5
 */
export function jonckheereTerpstra(table: Contingency): JonckheereTerpstraResult | NoJonckheereTerpstra {
  requireContingency("jonckheereTerpstra", table);
  const rows = rowSums(table);
  const columns = columnSums(table);
  const total = rows.reduce((sum, row) => sum + row, 0);
  const input = { method: "Jonckheere-Terpstra", table, statistic: pairsInOrder(table) } as const;
  for (const [counts, side] of [
    [rows, "row"],
    [columns, "column"],
  ] as const)
    if (counts.includes(total)) return { ...input, z: null, p: null, because: `all cases are in one ${side}` };

  const mean = (total ** 2 - rows.reduce((sum, row) => sum + row ** 2, 0)) / 4;
  const variance = varianceWithTies(rows, columns, total);
  const z = (input.statistic - mean) / Math.sqrt(variance);
  return { ...input, mean, variance, z, p: 2 * normalUpper(Math.abs(z)) };
}

function pairsInOrder(table: Contingency): number {
  const earlier = table[0]!.map(() => 0);
  let pairs = 0;
  for (const row of table) {
    let below = 0;
    row.forEach((count, j) => {
      pairs += count * (below + earlier[j]! / 2);
      below += earlier[j]!;
    });
    row.forEach((count, j) => (earlier[j]! += count));
  }
  return pairs;
}

function varianceWithTies(rows: readonly number[], columns: readonly number[], total: number): number {
  const sum = (counts: readonly number[], term: (n: number) => number): number =>
    counts.reduce((all, n) => all + term(n), 0);
  const pairs = (n: number): number => n * (n - 1);
  const triples = (n: number): number => n * (n - 1) * (n - 2);
  const cubic = (n: number): number => n * (n - 1) * (2 * n + 5);
  return (
    (cubic(total) - sum(rows, cubic) - sum(columns, cubic)) / 72 +
    (total > 2 ? (sum(rows, triples) * sum(columns, triples)) / (36 * triples(total)) : 0) +
    (sum(rows, pairs) * sum(columns, pairs)) / (8 * pairs(total))
  );
}
