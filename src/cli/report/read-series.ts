import { basename } from "node:path";
import { readAnswers } from "../../cases/read-answers.js";
import { readCases } from "../../cases/read-cases.js";
import { readSheet } from "../../cases/read-sheet.js";
import type { CaseTable } from "../../cases/types.js";
import { checkPlan } from "../../plan/check-plan.js";
import { draftPlan } from "../../plan/draft-plan.js";
import { readPlan } from "../../plan/read-plan.js";
import { successKinds, type Plan, type SuccessKind } from "../../plan/types.js";
import { InputError } from "../input-error.js";
import { readInput } from "../read-input.js";

export interface SeriesFiles {
  readonly plan?: string;
  readonly answers?: string;
  readonly sheet?: string;
}

export interface ReadSeries {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly table: CaseTable;
  readonly plan: Plan;
  /** True when the plan was drafted from the sheet. */
  readonly drafted: boolean;
  readonly assumptions: readonly string[];
}

/** Sheet, answers and plan, each held against the others. */
export async function readSeries(path: string, files: SeriesFiles): Promise<ReadSeries> {
  const bytes = await readInput(path);
  const raw = await readSheet(bytes, basename(path), files.sheet === undefined ? {} : { sheet: files.sheet });
  const answers = files.answers === undefined ? {} : readAnswers(await textOf(files.answers), basename(files.answers));
  const given = files.plan === undefined ? undefined : await planFile(files.plan);
  const table = readCases(raw, { answers, ...(given?.roles === undefined ? {} : { roles: given.roles }) });
  if (given === undefined) return { bytes, table, drafted: true, ...draftPlan(table) };
  checkPlan(given, table, basename(files.plan!));
  return { bytes, table, plan: given, drafted: false, assumptions: [] };
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
