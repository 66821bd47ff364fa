import { chiSquareUpper } from "../../numeric/chi-square.js";
import { requireOptions } from "../guards.js";
import { columnSums, requireContingency, rowSums, type Contingency } from "../tables/contingency.js";
import { consecutiveScores, deviations, requireScores, scaledScores } from "../tables/scores.js";
import { quadraticForm } from "./quadratic-form.js";

/** One statistic with its p, or the reason why there is none. */
export type StratifiedTest =
  | { readonly statistic: number; readonly df: number; readonly p: number }
  | { readonly statistic: null; readonly df: 0; readonly p: null; readonly because: string };

export interface GeneralisedCmhResult {
  readonly method: "generalised Cochran-Mantel-Haenszel";
  readonly tables: readonly Contingency[];
  readonly rowScores: readonly number[];
  readonly columnScores: readonly number[];
  /** Any difference between rows; no order used. */
  readonly association: StratifiedTest;
  /** Rows differ in their mean column score; columns ordered. */
  readonly meanScores: StratifiedTest;
  /** Mean column score moves with the row score; both ordered. */
  readonly correlation: StratifiedTest;
}

/**
 * Tests of row against column within strata, for tables larger than 2 x 2: nominal, ordered columns, both ordered.
 *
 * @param tables one table a stratum, all with the same rows and columns; an empty stratum does not matter
 * @param options.rowScores, options.columnScores default 1, 2, 3, ...
 * @throws RangeError when a table is not one of counts, shapes differ, or a score is missing or not finite
 * @see Landis, Heyman and Koch 1978, Int Stat Rev 46:237-254; Agresti 2002, Categorical Data Analysis, 2nd ed., section 7.5.3
 * @example generalisedCmh([[[3, 1], [1, 3]]]).correlation // => { statistic: 1.75, df: 1, p: 0.18587673 }
 */
export function generalisedCmh(
  tables: readonly Contingency[],
  options: { readonly rowScores?: readonly number[]; readonly columnScores?: readonly number[] } = {},
): GeneralisedCmhResult {
  requireOptions("generalisedCmh", options, ["rowScores", "columnScores"]);
  requireSameShape(tables);
  const [rows, columns] = [tables[0]!.length, tables[0]![0]!.length];
  const { rowScores = consecutiveScores(rows), columnScores = consecutiveScores(columns) } = options;
  requireScores("generalisedCmh", "rowScores", rowScores, rows);
  requireScores("generalisedCmh", "columnScores", columnScores, columns);

  const identity = (size: number): number[][] =>
    consecutiveScores(size).map((i) => consecutiveScores(size).map((j) => (i === j ? 1 : 0)));
  return {
    method: "generalised Cochran-Mantel-Haenszel",
    tables,
    rowScores,
    columnScores,
    association: contrast(tables, identity(rows), identity(columns)),
    meanScores: contrast(tables, identity(rows), [scaledScores(columnScores)]),
    correlation: contrast(tables, [scaledScores(rowScores)], [scaledScores(columnScores)]),
  };
}

function requireSameShape(tables: readonly Contingency[]): void {
  if (tables.length === 0) throw new RangeError("generalisedCmh: there must be at least one stratum, got none");
  const [rows, columns] = [tables[0]!.length, tables[0]![0]?.length ?? 0];
  if (columns === 0) throw new RangeError("generalisedCmh: tables[0] must have at least one row and one column");
  tables.forEach((table, k) => {
    if (table.length !== rows || table.some((row) => row.length !== columns))
      throw new RangeError(
        `generalisedCmh: tables[${k}] must have ${rows} rows of ${columns} columns as the first has`,
      );
    if (table.some((row) => row.some((count) => count !== 0)))
      requireContingency(`generalisedCmh: tables[${k}]`, table);
  });
}

/**
 * The test of (row contrasts) x (observed less expected counts) x (column contrasts): given the margins of a stratum
 * its covariance is a product of one matrix of the rows and one of the columns.
 */
function contrast(
  tables: readonly Contingency[],
  rowContrasts: readonly (readonly number[])[],
  columnContrasts: readonly (readonly number[])[],
): StratifiedTest {
  const size = rowContrasts.length * columnContrasts.length;
  const excess = new Array<number>(size).fill(0);
  const covariance = excess.map(() => new Array<number>(size).fill(0));
  for (const table of tables) {
    const rows = rowSums(table);
    const columns = columnSums(table);
    const total = rows.reduce((sum, row) => sum + row, 0);
    if (total < 2) continue;
    const byRow = spread(rowContrasts, rows, total);
    const byColumn = spread(columnContrasts, columns, total);
    rowContrasts.forEach((u, i) =>
      columnContrasts.forEach((v, j) => {
        const at = i * columnContrasts.length + j;
        table.forEach((row, a) =>
          row.forEach((count, b) => (excess[at]! += u[a]! * v[b]! * (count - (rows[a]! / total) * columns[b]!))),
        );
        byRow[i]!.forEach((rowPart, k) =>
          byColumn[j]!.forEach((columnPart, l) => {
            covariance[at]![k * columnContrasts.length + l]! += (rowPart * columnPart * total ** 2) / (total - 1);
          }),
        );
      }),
    );
  }
  const { value, rank } = quadraticForm(excess, covariance);
  return rank === 0
    ? {
        statistic: null,
        df: 0,
        p: null,
        because: "no stratum has cases in two rows and in two columns with different scores",
      }
    : { statistic: value, df: rank, p: chiSquareUpper(value, rank) };
}

/** Covariance of the contrasts over one margin's shares. */
function spread(contrasts: readonly (readonly number[])[], counts: readonly number[], total: number): number[][] {
  const around = contrasts.map((contrast) => deviations(contrast, counts));
  return around.map((u) =>
    around.map((v) => counts.reduce((sum, count, a) => sum + (u[a]! * v[a]! * count) / total, 0)),
  );
}
