import type { Redact } from "../quarantine.js";
import type { Limbs } from "../split-limbs.js";
import type { SheetIssue } from "../sheet-error.js";
import type { CaseName } from "../table/identify-cases.js";
import type { Line } from "../table/find-table.js";
import type { Answers, LogEntry, Question, RawCell, Role, Value } from "../types.js";
import { readByKey } from "./read-by-key.js";
import { readers } from "./readers.js";
import { settleColumn } from "./settle-column.js";
import { ask, leftOut, type ColumnFacts, type Reading } from "./reading.js";

/** A column's cells in the order of the lines, with what was recoded and what must be asked. */
export interface ReadColumn {
  readonly values: readonly Value[];
  readonly questions: readonly Question[];
  readonly log: readonly LogEntry[];
  /** Lines, by index, whose cell has an open question. */
  readonly openLines: ReadonlySet<number>;
  readonly issues: readonly SheetIssue[];
  /** Values of the two limbs by line, where an answer gives both. */
  readonly limbs: ReadonlyMap<number, Limbs>;
}

export interface ColumnTask {
  readonly position: number;
  readonly role: Role;
  readonly facts: ColumnFacts;
  readonly answers: Answers;
  readonly redact: Redact;
  /** Whether any answer names a single case. */
  readonly answersByCase: boolean;
  /** Name of each line's case, for answers about a single cell. */
  readonly cases: readonly CaseName[];
  /** Lines, by index, of cases that were excluded or not followed: a blank there is no doubt. */
  readonly excused?: ReadonlySet<number>;
  /** Width of the bone by line, in mm, where the sheet has it. */
  readonly widths?: readonly (number | undefined)[];
  /** Lines, by index, whose cell a question about the whole row covers. */
  readonly covered: ReadonlySet<number>;
}

/** Lasting name of a question: the same for the same text in the next version of the sheet. */
export function questionId(column: string, topic: string, text: string): string {
  return [column, topic, text].filter((part) => part !== "").join(" | ");
}

/** Like cells of a column: one reading, and their rows where a question or the log needs them. */
export interface Group {
  readonly reading: Reading;
  readonly raw: string;
  readonly text: string;
  readonly rows: number[];
  readonly keepsRows: boolean;
}

/** Roles whose cells are kept as they stand, whatever the sheet program made of them. */
const kept: ReadonlySet<Role> = new Set(["id", "child", "note", "identifier"]);
const errorText = /^#(REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|N\/A|SPILL!|CALC!|ERR\w*|ZAHL!|WERT!|BEZUG!|NV)$/i;

/** A formula that failed, or was saved without its result: not the same as an empty cell. */
function withoutResult(text: string, { formula, error }: RawCell): Reading | undefined {
  if (error || errorText.test(text))
    return ask("value", text, `"${text}" is a broken formula, without a value: what should stand there?`, leftOut);
  if (!formula || text !== "") return undefined;
  const sentence = "a formula was saved without its result: open the workbook, save it and read it again";
  return ask("formula", "", sentence, leftOut);
}

const blank: RawCell = { text: "" };
const coveredKey = "\u0000covered";
const coveredCell: Reading = { value: { kind: "missing", reason: "unknown" } };
const excusedKey = "\u0000excused";
const excusedBlank: Reading = {
  value: { kind: "missing", reason: "blank" },
  why: "blank in a case that was excluded or not followed",
};

/** Reads a column once per different text. */
export function readColumn(lines: readonly Line[], task: ColumnTask): ReadColumn {
  const { position, role, facts } = task;
  const read = (text: string, cell: RawCell): Reading =>
    (kept.has(role) ? undefined : withoutResult(text, cell)) ??
    (facts.key && readByKey(text, role, facts, cell, task.answers)) ??
    readers[role](text, facts, cell);
  const groups: Group[] = [];
  const known = new Map<string, number>();
  const perLine = new Uint32Array(lines.length);
  lines.forEach(({ row, texts }, i) => {
    const cell = row.cells[position] ?? blank;
    const text = texts[position] ?? "";
    const covered = task.covered.has(i);
    const excused = text === "" && task.excused?.has(i);
    const key = covered ? coveredKey : excused ? excusedKey : keyOf(cell);
    let at = known.get(key);
    if (at === undefined) {
      at = groups.length;
      known.set(key, at);
      const reading = covered ? coveredCell : excused ? excusedBlank : read(text, cell);
      groups.push(groupOf(reading, covered ? "" : cell.text, covered ? "" : text));
    }
    const group = groups[at]!;
    if (group.keepsRows) group.rows.push(row.number);
    perLine[i] = at;
  });
  return settleColumn(lines, perLine, groups, task);
}

const noRows: number[] = [];

/** Cells that stand as typed keep no rows: a column of 100,000 different notes needs none. */
function groupOf(reading: Reading, raw: string, text: string): Group {
  const keepsRows = reading.asks !== undefined || reading.why !== undefined || raw !== text;
  return { reading, raw, text, rows: keepsRows ? [] : noRows, keepsRows };
}

function keyOf(cell: RawCell): string {
  if (cell.formula && cell.text === "") return "\u0000f";
  if (cell.number === undefined && cell.date === undefined && cell.boolean === undefined && !cell.error)
    return cell.text;
  return `${cell.text}\u0000${cell.number === undefined ? "" : "n"}${cell.date === undefined ? "" : "d"}${cell.boolean === undefined ? "" : "b"}${cell.error ? "e" : ""}`;
}
