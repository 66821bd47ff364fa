import type { TableMargins, SquareTable } from "./square-table.js";

/** Agreement, chance agreement, kappa and its two variances, as fractions. */
export interface KappaMoments {
  readonly observed: number;
  readonly chance: number;
  readonly estimate: number;
  readonly standardError: number;
  readonly nullStandardError: number;
}

/**
 * Weighted agreement and kappa with the large-sample standard errors; null when chance agreement is 1.
 *
 * Agreement weights are 1 less the disagreement weights over the largest. Both variances are written as centred sums of
 * squares, equal to the printed forms but free of their cancellation.
 *
 * @see Fleiss, Cohen and Everitt 1969, Psychol Bull 72:323-327
 */
export function kappaMoments(
  table: SquareTable,
  margins: TableMargins,
  disagreement: readonly (readonly number[])[],
): KappaMoments | null {
  const { n, rows, columns } = margins;
  const largest = Math.max(...disagreement.flat());
  let apart = 0;
  let expected = 0;
  disagreement.forEach((row, i) =>
    row.forEach((weight, j) => {
      apart += weight * table[i]![j]!;
      expected += weight * rows[i]! * columns[j]!;
    }),
  );
  if (expected === 0) return null;
  const observed = 1 - apart / n / largest;
  const chance = 1 - expected / n / n / largest;
  return { observed, chance, estimate: 1 - (apart * n) / expected, ...errors(table, margins, disagreement, largest) };
}

function errors(
  table: SquareTable,
  { n, rows, columns }: TableMargins,
  disagreement: readonly (readonly number[])[],
  largest: number,
): { readonly standardError: number; readonly nullStandardError: number } {
  // A rater who used one grade makes every influence equal: the standard error is exactly 0.
  if (rows.includes(n) || columns.includes(n)) return { standardError: 0, nullStandardError: 0 };
  const q = disagreement.map((row) => row.map((weight) => weight / largest));
  const qRows = q.map((row) => row.reduce((sum, weight, j) => sum + (weight * columns[j]!) / n, 0));
  const qColumns = q.map((_, j) => q.reduce((sum, row, i) => sum + (row[j]! * rows[i]!) / n, 0));
  const chance = qRows.reduce((sum, value, i) => sum + (value * rows[i]!) / n, 0);
  const apart = q.reduce((sum, row, i) => sum + row.reduce((s, weight, j) => s + (weight * table[i]![j]!) / n, 0), 0);
  let variance = 0;
  let nullVariance = 0;
  q.forEach((row, i) =>
    row.forEach((weight, j) => {
      const marginal = qRows[i]! + qColumns[j]!;
      variance += (table[i]![j]! / n) * (weight * chance - marginal * apart + apart * chance) ** 2;
      nullVariance += (rows[i]! / n) * (columns[j]! / n) * (weight - marginal + chance) ** 2;
    }),
  );
  return {
    standardError: Math.sqrt(variance / n) / chance ** 2,
    nullStandardError: Math.sqrt(nullVariance / n) / chance,
  };
}
