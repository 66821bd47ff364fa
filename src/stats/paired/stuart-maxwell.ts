import { chiSquareUpper } from "../../numeric/chi-square.js";
import type { NotEstimable } from "../types.js";
import { noChange, requireSquareTable } from "./square-table.js";

/** Stuart-Maxwell test of equal margins of a square table. */
export type StuartMaxwellResult = {
  readonly method: "stuartMaxwell";
  readonly table: readonly (readonly number[])[];
} & ({ readonly statistic: number; readonly df: number; readonly p: number } | NotEstimable);

/**
 * Stuart-Maxwell chi-square test that both readings use the categories equally often. Categories that no change links to the
 * others are tested among themselves; the degrees of freedom are the categories less these groups of them.
 * @param table counts of pairs: row the first category, column the second
 * @throws RangeError when the table is not square, holds no counts or no pair
 * @see Stuart 1955, Biometrika 42:412-416; Maxwell 1970, Br J Psychiatry 116:651-655
 * @example stuartMaxwell([[10, 4, 1], [1, 12, 5], [0, 2, 9]]).statistic // => 4.0851064
 */
export function stuartMaxwell(table: readonly (readonly number[])[]): StuartMaxwellResult {
  requireSquareTable("stuartMaxwell", table);
  const categories = table.map((_, i) => i);
  const between = (i: number, j: number): number => table[i]![j]! + table[j]![i]!;
  const others = (i: number): number[] => categories.filter((j) => j !== i);
  const surplus = categories.map((i) => others(i).reduce((total, j) => total + table[i]![j]! - table[j]![i]!, 0));
  const kept = categories.filter((i) => !firstOfItsGroup(i, categories, between));
  if (kept.length === 0) return { method: "stuartMaxwell", table, estimate: null, because: noChange };

  const covariance = kept.map((i) =>
    kept.map((j) => (i === j ? others(i).reduce((total, other) => total + between(i, other), 0) : -between(i, j))),
  );
  const deviation = kept.map((i) => surplus[i]!);
  const statistic = quadraticForm(covariance, deviation);
  const df = kept.length;
  return { method: "stuartMaxwell", table, statistic, df, p: chiSquareUpper(statistic, df) };
}

/** Whether no earlier category is linked to this one by changes, directly or through others. */
function firstOfItsGroup(
  start: number,
  categories: readonly number[],
  between: (i: number, j: number) => number,
): boolean {
  const reached = new Set([start]);
  for (const i of reached) for (const j of categories) if (i !== j && between(i, j) > 0) reached.add(j);
  return Math.min(...reached) === start;
}

/** d' S^-1 d of a positive definite matrix, by elimination without exchanges. */
function quadraticForm(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  const rows = matrix.map((row, i) => [...row, vector[i]!]);
  let sum = 0;
  rows.forEach((pivot, i) => {
    const d = pivot.at(-1)!;
    sum += d ** 2 / pivot[i]!;
    for (const row of rows.slice(i + 1)) {
      const factor = row[i]! / pivot[i]!;
      for (let j = i; j < row.length; j++) row[j]! -= factor * pivot[j]!;
    }
  });
  return sum;
}
