import { chiSquareUpper } from "../../numeric/chi-square.js";
import { columnSums, requireContingency, rowSums, withoutEmpty, type Contingency } from "./contingency.js";

interface KruskalWallis {
  readonly method: "Kruskal-Wallis";
  readonly table: Contingency;
}

export interface KruskalWallisResult extends KruskalWallis {
  /** Corrected for ties. */
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
}

export interface NoKruskalWallis extends KruskalWallis {
  readonly statistic: null;
  readonly p: null;
  readonly because: string;
}

/**
 * Large-sample test whether unordered groups differ in an ordered result, by ranks.
 *
 * @param table counts; rows are the groups, columns the ordered results; empty rows and columns do not matter
 * @throws RangeError when the table is not one of counts
 * @see Kruskal and Wallis 1952, JASA 47:583-621, equations 1.1 to 1.3
 * @example kruskalWallis([[3, 1, 0], [1, 2, 1], [0, 1, 3]]).statistic // => 6.1875
 */
export function kruskalWallis(table: Contingency): KruskalWallisResult | NoKruskalWallis {
  requireContingency("kruskalWallis", table);
  const used = withoutEmpty(table);
  const method = "Kruskal-Wallis";
  if (used.length < 2 || used[0]!.length < 2)
    return {
      method,
      table,
      statistic: null,
      p: null,
      because: `all cases are in one ${used.length < 2 ? "row" : "column"}`,
    };

  const rows = rowSums(used);
  const columns = columnSums(used);
  const total = rows.reduce((sum, row) => sum + row, 0);
  let before = 0;
  // Midranks less their mean, so that no large squares cancel.
  const ranks = columns.map((count) => {
    const rank = before + (count - total) / 2;
    before += count;
    return rank;
  });
  const between = used.reduce(
    (sum, row, i) => sum + row.reduce((ranksum, count, j) => ranksum + count * ranks[j]!, 0) ** 2 / rows[i]!,
    0,
  );
  // The spread of midranks is that of 1 to n less what the ties take.
  const spread = columns.reduce((sum, count, j) => sum + count * ranks[j]! ** 2, 0);
  const statistic = ((total - 1) * between) / spread;
  const df = rows.length - 1;
  return { method, table, statistic, df, p: chiSquareUpper(statistic, df) };
}
