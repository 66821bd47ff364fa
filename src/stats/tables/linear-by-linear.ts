import { normalUpper } from "../../numeric/normal.js";
import { requireOptions } from "../guards.js";
import { columnSums, requireContingency, rowSums, type Contingency } from "./contingency.js";
import { consecutiveScores, requireScores } from "./scores.js";

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
  const rows = centred(rowScores, rowSums(table));
  const columns = centred(columnScores, columnSums(table));
  if (rows.spread === 0 || columns.spread === 0)
    return {
      ...input,
      statistic: null,
      p: null,
      because: `all cases have the same ${rows.spread === 0 ? "row" : "column"} score`,
    };
  let product = 0;
  table.forEach((row, i) => row.forEach((count, j) => (product += count * rows.scores[i]! * columns.scores[j]!)));
  const correlation = product / Math.sqrt(rows.spread * columns.spread);
  const z = correlation * Math.sqrt(rows.total - 1);
  return { ...input, correlation, statistic: z ** 2, z, p: 2 * normalUpper(Math.abs(z)) };
}

/** Scores less their mean over the cases, and their sum of squares. */
function centred(
  scores: readonly number[],
  counts: readonly number[],
): { readonly scores: number[]; readonly spread: number; readonly total: number } {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const mean = counts.reduce((sum, count, i) => sum + (count * scores[i]!) / total, 0);
  const used = scores.filter((_, i) => counts[i]! > 0);
  // Rounding of the mean must not turn equal scores into different ones.
  if (used.every((score) => score === used[0])) return { scores: scores.map(() => 0), spread: 0, total };
  const around = scores.map((score) => score - mean);
  return { scores: around, spread: counts.reduce((sum, count, i) => sum + count * around[i]! ** 2, 0), total };
}
