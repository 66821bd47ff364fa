import { normalUpper } from "../../numeric/normal.js";
import { requireOptions } from "../guards.js";
import { columnSums, requireContingency, rowSums, type Contingency } from "./contingency.js";
import { consecutiveScores, deviations, requireScores, scaledScores } from "./scores.js";

interface LinearByLinear {
  readonly method: "linear-by-linear association";
  readonly table: Contingency;
  readonly rowScores: readonly number[];
  readonly columnScores: readonly number[];
}

export interface LinearByLinearResult extends LinearByLinear {
  /** Correlation of the scores over the cases. */
  readonly correlation: number;
  /** (cases - 1) times the squared correlation, 1 degree of freedom. */
  readonly statistic: number;
  /** Positive when the column score rises with the row score. */
  readonly z: number;
  readonly p: number;
}

export interface NoLinearByLinear extends LinearByLinear {
  readonly statistic: null;
  readonly p: null;
  readonly because: string;
}

/**
 * Large-sample test for a linear association of two ordered classifications.
 *
 * @param table counts by row and column; an empty row or column keeps its score
 * @param options.rowScores, options.columnScores default 1, 2, 3, ...
 * @throws RangeError when the table is not one of counts, or a score is missing or not finite
 * @see Mantel 1963, JASA 58:690-700; Agresti 2002, Categorical Data Analysis, 2nd ed., section 3.4.1
 * @example linearByLinear([[1, 3, 10, 6], [2, 3, 10, 7], [1, 6, 14, 12], [0, 1, 9, 11]]).statistic // => 2.98298812
 */
export function linearByLinear(
  table: Contingency,
  options: { readonly rowScores?: readonly number[]; readonly columnScores?: readonly number[] } = {},
): LinearByLinearResult | NoLinearByLinear {
  requireOptions("linearByLinear", options, ["rowScores", "columnScores"]);
  requireContingency("linearByLinear", table);
  const { rowScores = consecutiveScores(table.length), columnScores = consecutiveScores(table[0]!.length) } = options;
  requireScores("linearByLinear", "rowScores", rowScores, table.length);
  requireScores("linearByLinear", "columnScores", columnScores, table[0]!.length);

  const input = { method: "linear-by-linear association", table, rowScores, columnScores } as const;
  const [rowCounts, columnCounts] = [rowSums(table), columnSums(table)];
  const rows = deviations(scaledScores(rowScores), rowCounts);
  const columns = deviations(scaledScores(columnScores), columnCounts);
  const squares = (around: readonly number[], counts: readonly number[]): number =>
    counts.reduce((sum, count, i) => sum + count * around[i]! ** 2, 0);
  const [rowSpread, columnSpread] = [squares(rows, rowCounts), squares(columns, columnCounts)];
  if (rowSpread === 0 || columnSpread === 0)
    return {
      ...input,
      statistic: null,
      p: null,
      because: `all cases have the same ${rowSpread === 0 ? "row" : "column"} score`,
    };
  let product = 0;
  table.forEach((row, i) => row.forEach((count, j) => (product += count * rows[i]! * columns[j]!)));
  const correlation = product / (Math.sqrt(rowSpread) * Math.sqrt(columnSpread));
  const z = correlation * Math.sqrt(rowCounts.reduce((sum, count) => sum + count, -1));
  return { ...input, correlation, statistic: z ** 2, z, p: 2 * normalUpper(Math.abs(z)) };
}
