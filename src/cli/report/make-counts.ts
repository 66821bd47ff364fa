import { countRows, type CountRow } from "../../findings/count-rows.js";
import { mergeSmallCells } from "../../findings/merge-small-cells.js";
import { buildLedger } from "../../ledger/build-ledger.js";
import { planSql } from "../../plan/plan-sql.js";
import type { SuccessKind } from "../../plan/types.js";
import { countsCsv } from "../../report/counts-csv.js";
import { InputError } from "../input-error.js";
import { planFile, readSeries, successKind, type SeriesFiles } from "./read-series.js";

interface CountsOptions extends SeriesFiles {
  readonly name: string;
  readonly success?: string;
  readonly table: string;
}

interface Counts {
  readonly series: string;
  readonly success: SuccessKind;
  /** Cells of fewer cases than this were put together with their neighbours; null when the plan names no such number. */
  readonly smallCells: number | null;
  readonly rows: readonly CountRow[];
  readonly csv: string;
}

/** The analysed cases as counts only, small cells handled as the plan says. */
export async function makeCounts(path: string | undefined, options: CountsOptions): Promise<Counts> {
  if (path === undefined) throw new InputError("counts: a sheet must be named");
  const { table, plan } = await readSeries(path, options);
  const success = successKind(options.success) ?? plan.primary;
  if (!plan.success.some(({ kind }) => kind === success))
    throw new InputError(`--success: the plan defines no success of the kind ${success}`);
  const smallCells = plan.smallCells ?? null;
  const all = countRows(buildLedger(table, plan), success);
  const rows = smallCells === null ? all : mergeSmallCells(all, smallCells);
  return { series: options.name, success, smallCells, rows, csv: countsCsv(options.name, rows) };
}

/** The same counts as one statement for any SQL engine. */
export async function makeSql(options: CountsOptions): Promise<string> {
  if (options.plan === undefined) throw new InputError("counts --sql: needs --plan, since no sheet is read");
  const success = successKind(options.success);
  return planSql(await planFile(options.plan), { table: options.table, ...(success === undefined ? {} : { success }) });
}
