import { basename } from "node:path";
import { readAnswers } from "../../cases/read-answers.js";
import type { VersionChanges } from "../../cases/compare-versions.js";
import { newVersion } from "../../cases/new-version.js";
import { readCases } from "../../cases/read-cases.js";
import { readSheet } from "../../cases/read-sheet.js";
import { SheetError } from "../../cases/sheet-error.js";
import type { CaseTable } from "../../cases/types.js";
import { checkPlan } from "../../plan/check-plan.js";
import { draftPlan, type DraftedPlan } from "../../plan/draft-plan.js";
import { PlanError } from "../../plan/plan-error.js";
import { readPlan } from "../../plan/read-plan.js";
import { successKinds, type Plan, type SuccessKind } from "../../plan/types.js";
import { InputError } from "../input-error.js";
import { readInput } from "../read-input.js";

export interface SeriesFiles {
  readonly plan?: string;
  readonly answers?: string;
  readonly sheet?: string;
  /** An earlier version of the sheet, to which the answers were given. */
  readonly before?: string;
}

export interface ReadSeries {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly table: CaseTable;
  readonly plan: Plan;
  /** True when the plan was drafted from the sheet. */
  readonly drafted: boolean;
  readonly assumptions: readonly string[];
  readonly earlier?: EarlierVersion;
}

export interface EarlierVersion {
  readonly file: string;
  readonly table: CaseTable;
  /** Null when the plan does not fit the earlier sheet: then its numbers are not compared. */
  readonly plan: Plan | null;
  /** Why its numbers are not compared. */
  readonly uncounted?: string;
  readonly changes: VersionChanges;
}

/** Sheet, answers and plan, each held against the others. */
export async function readSeries(path: string, files: SeriesFiles): Promise<ReadSeries> {
  const bytes = await readInput(path);
  const raw = await readSheet(bytes, basename(path), files.sheet === undefined ? {} : { sheet: files.sheet });
  const answers = files.answers === undefined ? {} : readAnswers(await textOf(files.answers), basename(files.answers));
  const given = files.plan === undefined ? undefined : await planFile(files.plan);
  const options = { answers, ...(given?.roles === undefined ? {} : { roles: given.roles }) };
  const planFor = (table: CaseTable): DraftedPlan => {
    if (given === undefined) return draftPlan(table);
    checkPlan(given, table, basename(files.plan!));
    return { plan: given, assumptions: [] };
  };
  const drafted = given === undefined;
  if (files.before === undefined) {
    const table = readCases(raw, options);
    return { bytes, table, drafted, ...planFor(table) };
  }
  const earlierSheet = await readSheet(await readInput(files.before), basename(files.before));
  const { before, table, changes, related } = newVersion(earlierSheet, raw, options);
  if (!related) throw new InputError(`--before: no case of ${before.file} is in ${table.file}`);
  return { bytes, table, drafted, ...planFor(table), earlier: earlierVersion(before, changes, planFor) };
}

/** The earlier version under the new names of its columns, with the plan where it can be counted by one. */
function earlierVersion(
  before: CaseTable,
  changes: VersionChanges,
  planFor: (table: CaseTable) => DraftedPlan,
): EarlierVersion {
  const names = new Map(changes.renamed.map((one) => [one.before, one.after]));
  const columns = before.columns.map((column) => ({ ...column, name: names.get(column.name) ?? column.name }));
  const table = { ...before, columns };
  try {
    return { file: before.file, table, plan: planFor(table).plan, changes };
  } catch (error) {
    if (!(error instanceof PlanError || error instanceof SheetError)) throw error;
    return { file: before.file, table, plan: null, uncounted: error.message, changes };
  }
}

/** The plan in a file. */
export async function planFile(path: string): Promise<Plan> {
  return readPlan(await textOf(path), basename(path));
}

/** The kind of success that an option names, if any. */
export function successKind(text: string | undefined): SuccessKind | undefined {
  if (text === undefined) return undefined;
  const kind = successKinds.find((one) => one === text);
  if (kind === undefined) throw new InputError(`--success: must be one of ${successKinds.join(", ")}, got ${text}`);
  return kind;
}

async function textOf(path: string): Promise<string> {
  return new TextDecoder().decode(await readInput(path));
}
