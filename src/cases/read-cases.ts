import { askFile } from "./ask-file.js";
import { joinTables, partOfCases, rightTableId } from "./ask-tables.js";
import { askRepeats } from "./ask-repeats.js";
import { askOverflow } from "./checks/ask-overflow.js";
import { checkDraft } from "./checks/check-draft.js";
import { dateColumns } from "./checks/date-words.js";
import { countCells } from "./count-cells.js";
import { describeColumn } from "./describe-column.js";
import { settleDoubts, type Draft } from "./doubts.js";
import { quarantine, type Redact } from "./quarantine.js";
import { SheetError } from "./sheet-error.js";
import { splitLimbs } from "./split-limbs.js";
import { applyLineAnswers } from "./table/apply-line-answers.js";
import { assignRoles } from "./table/assign-roles.js";
import { distinctCells } from "./table/distinct-cells.js";
import { findTable, type FoundTable } from "./table/find-table.js";
import { headingRoles } from "./table/heading-words.js";
import { codesOf, findKeys, keyFor } from "./table/find-keys.js";
import { guessRoles } from "./table/guess-roles.js";
import { identifyCases } from "./table/identify-cases.js";
import type { Answers, CaseTable, RawSheet, Role, SetAside } from "./types.js";
import { columnFacts, type Distinct } from "./values/column-facts.js";
import { keySuits } from "./values/read-by-key.js";
import { readColumns, type Unread } from "./values/read-columns.js";
import { latestYearNamed } from "./values/latest-year.js";

export interface ReadCasesOptions {
  /** Role by column name, where the guess is wrong. */
  readonly roles?: Readonly<Record<string, Role>>;
  readonly answers?: Answers;
  /** ISO date; two-digit years end with the year after it. Default: the latest year that the sheet names. */
  readonly today?: string;
  /** Called after each column is read. */
  readonly onProgress?: (done: number, total: number) => void;
}

/**
 * Makes a checked case table of a sheet: finds the table, guesses roles, reads each cell, asks about what only a person can
 * decide, sets aside what is no case. Pure: the sheet is not changed, the same input gives the same table.
 * @throws SheetError when the sheet has no table, a role names an absent column, or an answer fits no choice
 */
export function readCases(sheet: RawSheet, options: ReadCasesOptions = {}): CaseTable {
  const answers = options.answers ?? {};
  const { unread, redact, found } = prepare(sheet, options);
  const side = unread.roles.indexOf("side");

  const overflow = askOverflow(unread);
  const covered = overflow.flatMap(({ blocks }) => blocks);
  const columns = readColumns(unread, { answers, redact, covered, onProgress: options.onProgress ?? (() => {}) });
  const draft: Draft = { ...unread, values: columns.map(({ values }) => values) };
  const settled = settleDoubts(draft, [...overflow, ...checkDraft(draft)], answers, redact);
  const eventDate =
    dateColumns(draft).get("injury") ?? dateColumns(draft).get("treatment") ?? draft.roles.indexOf("date");
  const repeats = askRepeats(draft, settled.values[side] ?? [], settled.values[eventDate] ?? [], answers, redact);

  const file = askFile(sheet, found, answers, redact);
  const issues = [...file.issues, ...columns.flatMap((column) => column.issues), ...settled.issues, ...repeats.issues];
  if (issues.length > 0) throw new SheetError(redact(sheet.file), issues);
  const setAside: SetAside[] = found.setAside.map(({ row, text, why }) => ({ row, text: redact(text), why }));
  setAside.push(...repeats.setAside);
  return {
    file: redact(sheet.file),
    header: { rows: found.headingRows },
    columns: draft.names.map((_, k) => describeColumn(draft, k, redact)),
    cases: draft.lines.flatMap((line, i) => {
      if (repeats.dropped.has(i)) return [];
      const values = settled.values.map((column) => column[i]!);
      return splitLimbs(
        line,
        draft.cases[i]!,
        values,
        side,
        columns.map(({ limbs }) => limbs.get(i)),
      );
    }),
    setAside: setAside.toSorted((a, b) => a.row - b.row),
    identifiers: draft.names.filter((_, k) => draft.roles[k] === "identifier"),
    questions: [
      ...file.questions,
      ...repeats.questions,
      ...columns.flatMap((column) => column.questions),
      ...settled.questions,
    ],
    log: [...columns.flatMap((column) => column.log), ...settled.log],
    cells: countCells(draft, { columns, open: settled.open, dropped: repeats.dropped }),
  };
}

interface Prepared {
  readonly unread: Unread;
  readonly redact: Redact;
  readonly found: FoundTable;
}

/** Names, roles and facts of the columns, and what of the identifiers must not be shown. */
function prepare(sheet: RawSheet, options: ReadCasesOptions): Prepared {
  const answers = options.answers ?? {};
  const first = findTable(sheet, {
    keepRight: Object.hasOwn(answers, rightTableId) && answers[rightTableId] === partOfCases,
  });
  if (first.lines.length === 0)
    throw new SheetError(sheet.file, [{ rule: "holds no cases; expected a heading row and one row a case" }]);
  const { lines } = first;
  if (first.names.length === 1 && headingRoles(first.names[0]!).length === 0)
    throw new SheetError(sheet.file, [
      { rule: "holds no cases: one column, without a heading that names a grade or outcome" },
    ]);
  const positions = first.names.flatMap((name, c) => (name === "" ? [] : [c]));
  const names = positions.map((c) => first.names[c]!);
  const cells: readonly (readonly Distinct[])[] = positions.map((c) => distinctCells(lines, c));
  const keys = findKeys(first);
  const roles = assignRoles(guessRoles(names, cells, lines.length, keys), names, options.roles, sheet.file);
  const withheld = roles.flatMap((role, k) => (role === "identifier" ? cells[k]!.map(({ text }) => text) : []));
  const latest = options.today ? Number(options.today.slice(0, 4)) : latestYearNamed(cells);
  const facts = names.map((name, k) => {
    const key = keyFor(name, codesOf(cells[k]!), keys);
    const found = columnFacts(name, roles[k]!, cells[k]!, sheet, latest);
    return key && keySuits(key, roles[k]!) ? { ...found, key } : found;
  });
  const redact = quarantine(withheld);
  const found = applyLineAnswers(joinTables(first, answers, redact), answers, redact);
  const unread = { sheet, lines: found.lines, names, roles, facts, positions, cases: [] };
  return { unread: { ...unread, cases: identified(unread) }, redact, found };
}

function identified({ lines, roles, positions }: Unread): Draft["cases"] {
  const at = (role: Role): number | undefined => positions[roles.indexOf(role)];
  return identifyCases(lines, { id: at("id"), child: at("child"), person: at("identifier"), side: at("side") });
}
