import { carryAnswers } from "./carry-answers.js";
import { compareVersions, type VersionChanges } from "./compare-versions.js";
import { readCases, type ReadCasesOptions } from "./read-cases.js";
import type { Answers, CaseTable, RawSheet, Role } from "./types.js";

/** Two versions of a sheet, read with the same answers and roles. */
export interface NewVersion {
  readonly before: CaseTable;
  readonly table: CaseTable;
  readonly answers: Answers;
  /** Of the columns that are still there. */
  readonly roles: Readonly<Record<string, Role>>;
  /** Texts of notes are not repeated: what identifies somebody in one version may stand in a note of the other. */
  readonly changes: VersionChanges;
  /** False when no case is in both: then it is another sheet, not another version. */
  readonly related: boolean;
}

/**
 * Reads a new version of a sheet. Answers follow their question over a renamed column; those without a question stay, in
 * case it comes back.
 * @throws SheetError as readCases does
 */
export function newVersion(earlier: RawSheet, sheet: RawSheet, options: ReadCasesOptions = {}): NewVersion {
  const { answers: given = {}, roles: all = {}, ...rest } = options;
  const names = new Set(readCases(sheet, rest).columns.map(({ name }) => name));
  const roles = Object.fromEntries(Object.entries(all).filter(([name]) => names.has(name)));
  // A column is known again under another heading by its values, which must be alike: both without answers.
  const asked = [readCases(earlier, { ...rest, roles: all }), readCases(sheet, { ...rest, roles })] as const;
  const answers = { ...given, ...carryAnswers(given, compareVersions(...asked), asked[1]) };
  const before = readCases(earlier, options);
  const table = readCases(sheet, { ...rest, roles, answers });
  const found = compareVersions(before, table);
  const changes = { ...found, changed: withoutNotes(found.changed, [before, table]) };
  return { before, table, answers, roles, changes, related: found.removed.length < before.cases.length };
}

function withoutNotes(changed: VersionChanges["changed"], tables: readonly CaseTable[]): VersionChanges["changed"] {
  const columns = tables.flatMap((table) => table.columns);
  const notes = new Set(columns.filter(({ role }) => role === "note").map(({ name }) => name));
  const hidden = { before: "a note, not shown", after: "a note, not shown" };
  return changed.map((cell) => (notes.has(cell.column) ? { ...cell, ...hidden } : cell));
}
