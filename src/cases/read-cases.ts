import { derivePercent } from "./derive-percent.js";
import { askFile } from "./ask-file.js";
import { askRepeats } from "./ask-repeats.js";
import { askOverflow } from "./checks/ask-overflow.js";
import { checkDraft } from "./checks/check-draft.js";
import { dateColumns } from "./checks/date-words.js";
import { countCells } from "./count-cells.js";
import { describeColumn } from "./describe-column.js";
import { holdBack, touchingCases } from "./hold-back.js";
import { inSheets } from "./row-words.js";
import { settleDoubts, type Draft } from "./doubts.js";
import { prepareCases } from "./prepare-cases.js";
import { readingSteps } from "./reading-steps.js";
import { SheetError } from "./sheet-error.js";
import { splitLimbs } from "./split-limbs.js";
import { showValue } from "./show-value.js";
import type { FoundTable } from "./table/find-table.js";
import type { Answers, CaseTable, LogEntry, RawSheet, Role, SetAside } from "./types.js";
import { readColumns } from "./values/read-columns.js";

export interface ReadCasesOptions {
  /** Role by column name, where the guess is wrong. */
  readonly roles?: Readonly<Record<string, Role>>;
  readonly answers?: Answers;
  /** ISO date; two-digit years end with the year after it. Default: the latest year that the sheet names. */
  readonly today?: string;
  /** Names of operators in the order of their codes, in lower case; further ones follow. */
  readonly staff?: readonly string[];
  /** Called with the share of the work that is done, rising to 1. */
  readonly onProgress?: (share: number) => void;
}

/**
 * Makes a checked case table of a sheet: finds the table, guesses roles, reads each cell, asks about what only a person can
 * decide, sets aside what is no case. Pure: the sheet is not changed, the same input gives the same table.
 * @throws SheetError when the sheet has no table, a role names an absent column, or an answer fits no choice
 */
export function readCases(sheet: RawSheet, options: ReadCasesOptions = {}): CaseTable {
  const answers = options.answers ?? {};
  const steps = readingSteps(options.onProgress);
  const { unread, redact, found, questions, parts, issues: early } = prepareCases(sheet, options);
  const side = unread.roles.indexOf("side");

  const overflow = askOverflow(unread);
  const covered = overflow.flatMap(({ blocks }) => blocks);
  const columns = readColumns(unread, { answers, redact, covered, onProgress: steps.read });
  const draft: Draft = { ...unread, values: columns.map(({ values }) => values) };
  const settled = settleDoubts(draft, [...overflow, ...checkDraft(draft)], answers, redact);
  const eventDate =
    dateColumns(draft).get("injury") ?? dateColumns(draft).get("treatment") ?? draft.roles.indexOf("date");
  const repeats = askRepeats(draft, settled.values[side] ?? [], settled.values[eventDate] ?? [], answers, redact);

  const file = askFile(unread.sheet, found, answers, redact);
  const issues = [
    ...early,
    ...file.issues,
    ...columns.flatMap((column) => column.issues),
    ...settled.issues,
    ...repeats.issues,
  ];
  if (issues.length > 0) throw new SheetError(redact(sheet.file), issues);
  const touching = [...repeats.questions, ...touchingCases(file.questions, draft.lines.length)];
  const { values: shown, open: held } = holdBack(draft, settled.values, touching);
  const setAside: SetAside[] = found.setAside.map(({ row, text, why }) => ({ row, text: redact(text), why }));
  setAside.push(...repeats.setAside);
  const table: CaseTable = {
    file: redact(sheet.file),
    header: { rows: found.headingRows },
    ...(parts ? { sheets: parts } : {}),
    columns: draft.names.map((_, k) => describeColumn(draft, k, redact)),
    cases: draft.lines.flatMap((line, i) => {
      if (repeats.dropped.has(i)) return [];
      const values = shown.map((column) => column[i]!);
      return splitLimbs(line, draft.cases[i]!, values, side, (k) => columns[k]!.limbs.get(i));
    }),
    setAside: setAside.toSorted((a, b) => a.row - b.row),
    identifiers: draft.names.filter((_, k) => draft.roles[k] === "identifier"),
    questions: inSheets(
      [
        ...questions,
        ...file.questions,
        ...repeats.questions,
        ...columns.flatMap((column) => column.questions),
        // Row by row makes no sense while rows may be visits.
        ...settled.questions.filter(({ id }) => !repeats.visits || !id.includes(" | success against its rule | ")),
      ],
      parts,
    ),
    log: [...mergedLog(draft, found), ...columns.flatMap((column) => column.log), ...settled.log],
    cells: countCells(draft, { columns, open: [...settled.open, ...held], dropped: repeats.dropped }),
  };
  steps.done();
  return derivePercent(table, answers);
}

/** Cells filled from a merged one, for the log. */
function mergedLog({ lines, positions, names, roles, values }: Draft, { merged }: FoundTable): LogEntry[] {
  return merged.flatMap(({ column, rows }): LogEntry[] => {
    const k = positions.indexOf(column);
    const line = lines.findIndex(({ row }) => row.number === rows[0]);
    if (k < 0 || line < 0 || roles[k] === "identifier") return [];
    const to = showValue(values[k]![line]!);
    return [{ row: rows[0]!, rows, column: names[k]!, from: "", to, why: "one merged cell holds for these rows" }];
  });
}
