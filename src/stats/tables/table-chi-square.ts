import { chiSquareUpper } from "../../numeric/chi-square.js";
import { columnSums, requireContingency, rowSums, withoutEmpty, type Contingency } from "./contingency.js";

interface TableChiSquare {
  readonly method: "Pearson chi-square";
  readonly table: Contingency;
}

export interface TableChiSquareResult extends TableChiSquare {
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
  /** Below 5 the chi-square distribution is a rough guide, below 1 no guide at all. */
  readonly smallestExpected: number;
}

export interface NoTableChiSquare extends TableChiSquare {
  readonly statistic: null;
  readonly df: 0;
  readonly p: null;
  readonly because: string;
}

/**
 * Pearson's chi-square test of a table of any size, without continuity correction; empty rows and columns are dropped.
 *
 * @param table counts by row and column
 * @throws RangeError when the table is ragged, empty or holds anything but counts
 * @see Pearson 1900, Phil Mag 50:157-175; degrees of freedom Fisher 1922, J R Stat Soc 85:87-94
 * @example tableChiSquare([[9, 0], [15, 1], [12, 3], [6, 5]]) // => { statistic: 9.26858766, df: 3, p: 0.0259250125 }
 */
export function tableChiSquare(table: Contingency): TableChiSquareResult | NoTableChiSquare {
  requireContingency("tableChiSquare", table);
  const used = withoutEmpty(table);
  const rows = rowSums(used);
  const columns = columnSums(used);
  const method = "Pearson chi-square";
  const df = (rows.length - 1) * (columns.length - 1);
  if (df === 0)
    return {
      method,
      table,
      statistic: null,
      df,
      p: null,
      because: `all cases are in one ${rows.length === 1 ? "row" : "column"}`,
    };

  const total = rows.reduce((sum, row) => sum + row, 0);
  let statistic = 0;
  used.forEach((row, i) =>
    row.forEach((count, j) => {
      const expected = (rows[i]! / total) * columns[j]!;
      statistic += (count - expected) ** 2 / expected;
    }),
  );
  const smallestExpected = (Math.min(...rows) / total) * Math.min(...columns);
  return { method, table, statistic, df, p: chiSquareUpper(statistic, df), smallestExpected };
}
