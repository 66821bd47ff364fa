import { chiSquareUpper } from "../../numeric/chi-square.js";
import type { NotEstimable } from "../types.js";
import { noChange, requireSquareTable } from "./square-table.js";

/** Bowker's test of symmetry of a square table. */
export type BowkerResult = { readonly method: "bowker"; readonly table: readonly (readonly number[])[] } & (
  { readonly statistic: number; readonly df: number; readonly p: number } | NotEstimable
);

/**
 * Bowker's chi-square test that changes from one category to another are as frequent as back. Two mirrored cells that are both
 * empty say nothing and take no degree of freedom.
 * @param table counts of pairs: row the first category, column the second
 * @throws RangeError when the table is not square, holds no counts or no pair
 * @see Bowker 1948, J Am Stat Assoc 43:572-574
 * @example bowker([[10, 4, 1], [1, 12, 5], [0, 2, 9]]).statistic // => 4.0857142857
 */
export function bowker(table: readonly (readonly number[])[]): BowkerResult {
  requireSquareTable("bowker", table);
  let statistic = 0;
  let df = 0;
  for (let i = 0; i < table.length; i++)
    for (let j = 0; j < i; j++) {
      const there = table[j]![i]!;
      const back = table[i]![j]!;
      if (there + back === 0) continue;
      statistic += (there - back) ** 2 / (there + back);
      df++;
    }
  if (df === 0) return { method: "bowker", table, estimate: null, because: noChange };
  return { method: "bowker", table, statistic, df, p: chiSquareUpper(statistic, df) };
}
