import { carryAnswers } from "./carry-answers.js";
import { compareVersions, type VersionChanges } from "./compare-versions.js";
import { readCases, type ReadCasesOptions } from "./read-cases.js";
import { staffOrder } from "./prepare-cases.js";
import { SheetError } from "./sheet-error.js";
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
 * Reads a new version of a sheet. Answers and roles follow their column over a new heading; answers without a question
 * stay, in case it comes back; answers that no longer fit are listed, and their questions asked again.
 * @throws SheetError as readCases does
 */
export function newVersion(earlier: RawSheet, sheet: RawSheet, options: ReadCasesOptions = {}): NewVersion {
  const { answers: given = {}, roles: all = {}, ...rest } = options;
  const staff = staffOrder(earlier, { ...rest, roles: all });
  const plain = { ...rest, staff };
  const fresh = readCases(sheet, plain);
  // A column is known again under another heading by its values, which must be alike: both without answers.
  const old = readCases(earlier, { ...plain, roles: all });
  const roles = followedRoles(all, old, fresh, (before, after) =>
    compareVersions(readCases(earlier, { ...plain, roles: before }), readCases(sheet, { ...plain, roles: after })),
  );
  const now = readCases(sheet, { ...plain, roles });
  const carried = { ...given, ...carryAnswers(given, compareVersions(old, now), now) };
  const before = readCases(earlier, { ...options, staff });
  const { table, answers, unfit } = readFitting(sheet, { ...plain, roles, answers: carried });
  const found = compareVersions(before, table);
  const changes = { ...found, changed: withoutNotes(found.changed, [before, table]), unfit };
  return { before, table, answers, roles, changes, related: found.removed.length < before.cases.length };
}

type Roles = Readonly<Record<string, Role>>;

/** What names a case is not read as anything else while columns are compared. */
const naming: ReadonlySet<Role> = new Set(["id", "child", "side", "date", "identifier"]);

/** Chosen roles of columns that are still there, and those of columns that are gone for the ones that took their values. */
function followedRoles(
  all: Roles,
  old: CaseTable,
  fresh: CaseTable,
  compare: (before: Roles, after: Roles) => VersionChanges,
): Roles {
  const names = new Set(fresh.columns.map(({ name }) => name));
  const entries = Object.entries(all);
  const kept = Object.fromEntries(entries.filter(([name]) => names.has(name)));
  const gone = entries.filter(([name, role]) => !names.has(name) && !naming.has(role));
  if (gone.length === 0) return kept;
  // Both sides as plain text: the same cells read by two roles would not look alike.
  const known = new Set(old.columns.map(({ name }) => name));
  const added = fresh.columns.filter(({ name, role }) => !known.has(name) && !naming.has(role));
  const asText = (list: readonly string[]): Roles => Object.fromEntries(list.map((name) => [name, "other"]));
  const { renamed } = compare(
    { ...all, ...asText(gone.map(([name]) => name)) },
    { ...kept, ...asText(added.map(({ name }) => name)) },
  );
  const followed = renamed.flatMap(({ before, after }): [string, Role][] =>
    all[before] === undefined || kept[after] !== undefined ? [] : [[after, all[before]]],
  );
  return { ...kept, ...Object.fromEntries(followed) };
}

/** Reads with all answers that fit, leaving out those that the sheet refuses. */
function readFitting(
  sheet: RawSheet,
  options: ReadCasesOptions & { readonly answers: Answers },
): Pick<NewVersion, "table" | "answers"> & Pick<Required<VersionChanges>, "unfit"> {
  let answers = options.answers;
  const unfit: { question: string; answer: string }[] = [];
  for (;;)
    try {
      return { table: readCases(sheet, { ...options, answers }), answers, unfit };
    } catch (error) {
      if (!(error instanceof SheetError)) throw error;
      const refused = new Set(error.issues.flatMap(({ question }) => question ?? []));
      if (!Object.keys(answers).some((id) => refused.has(id))) throw error;
      for (const id of refused) if (Object.hasOwn(answers, id)) unfit.push({ question: id, answer: answers[id]! });
      answers = Object.fromEntries(Object.entries(answers).filter(([id]) => !refused.has(id)));
    }
}

function withoutNotes(changed: VersionChanges["changed"], tables: readonly CaseTable[]): VersionChanges["changed"] {
  const columns = tables.flatMap((table) => table.columns);
  const notes = new Set(columns.filter(({ role }) => role === "note").map(({ name }) => name));
  const hidden = { before: "a note, not shown", after: "a note, not shown" };
  return changed.map((cell) => (notes.has(cell.column) ? { ...cell, ...hidden } : cell));
}
