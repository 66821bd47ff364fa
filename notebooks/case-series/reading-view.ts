import { shareSafe } from "../../src/cases/share-safe.js";
import type { CaseTable, Column, Question, RawSheet, SetAside } from "../../src/cases/types.js";
import { uniqueRows } from "../../src/cases/unique-rows.js";
import type { TextTable } from "../../src/report/text.js";
import { cellMarks, type CellMarks } from "./cell-marks.js";
import { logTable } from "./log-table.js";
import { rowWords } from "./row-words.js";

/** A question as it is shown: its first rows, and how many it concerns. */
export interface ShownQuestion extends Question {
  readonly rowCount: number;
}

/** What the page draws of how a sheet was read; never longer than a screen or two, however long the sheet. */
export interface ReadingView {
  readonly columns: readonly Column[];
  readonly marks: CellMarks;
  readonly questions: { readonly first: readonly ShownQuestion[]; readonly count: number };
  readonly setAside: { readonly first: readonly SetAside[]; readonly count: number };
  readonly log: TextTable;
}

/** What leaves a table before it is shared, and which rows may still be known again. */
export interface ShareView {
  readonly changes: readonly string[];
  readonly rows: number;
  readonly unique: { readonly first: readonly string[]; readonly count: number };
}

/** Questions at once: more would be a burden to read; the next ones come up as these are answered. */
const mostQuestions = 30;
/** Rows of the log, and lines set aside, that are drawn; all of them are in the saved log. */
const mostRows = 200;
const mostNumbers = 12;

export function readingView(sheet: RawSheet, table: CaseTable): ReadingView {
  const { columns, questions, setAside } = table;
  return {
    columns,
    marks: cellMarks(sheet, table),
    questions: {
      first: questions.slice(0, mostQuestions).map((one) => ({
        ...one,
        rows: one.rows.slice(0, mostNumbers),
        rowCount: one.rows.length,
      })),
      count: questions.length,
    },
    setAside: { first: setAside.slice(0, mostRows), count: setAside.length },
    log: shownLog(table),
  };
}

function shownLog(table: CaseTable): TextTable {
  const { log, setAside } = table;
  const shown = {
    ...table,
    log: log.slice(0, mostRows),
    setAside: setAside.slice(0, Math.max(0, mostRows - log.length)),
  };
  const whole = logTable(shown, (rows) => rowWords(rows.slice(0, mostNumbers), rows.length));
  return { ...whole, more: log.length + setAside.length - whole.rows.length };
}

export function shareView(table: CaseTable): ShareView {
  const shared = shareSafe(table);
  const unique = uniqueRows(shared);
  return {
    changes: shared.changes,
    rows: shared.rows.length,
    unique: { first: unique.slice(0, 30), count: unique.length },
  };
}
