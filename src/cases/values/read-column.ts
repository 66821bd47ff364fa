import type { Redact } from "../quarantine.js";
import type { SheetIssue } from "../sheet-error.js";
import { showValue } from "../show-value.js";
import type { Line } from "../table/find-table.js";
import type { Answers, LogEntry, Question, RawCell, Role, Value } from "../types.js";
import { readers } from "./readers.js";
import type { Choice, ColumnFacts, Reading } from "./reading.js";

/** A column's cells in the order of the lines, with what was recoded and what must be asked. */
export interface ReadColumn {
  readonly values: readonly Value[];
  readonly questions: readonly Question[];
  readonly log: readonly LogEntry[];
  /** Lines, by index, whose cell has an open question. */
  readonly openLines: ReadonlySet<number>;
  readonly issues: readonly SheetIssue[];
}

export interface ColumnTask {
  readonly position: number;
  readonly role: Role;
  readonly facts: ColumnFacts;
  readonly answers: Answers;
  readonly redact: Redact;
  /** Lasting name of each line, for answers about a single cell. */
  readonly keys: readonly string[];
  /** Lines, by index, of cases that were excluded or not followed: a blank there is no doubt. */
  readonly excused?: ReadonlySet<number>;
}

/** Lasting name of a question: the same for the same text in the next version of the sheet. */
export function questionId(column: string, topic: string, text: string): string {
  return [column, topic, text].filter((part) => part !== "").join(" | ");
}

interface Group {
  readonly reading: Reading;
  readonly raw: string;
  readonly text: string;
  readonly rows: number[];
}

const blank: RawCell = { text: "" };
const excusedKey = "\u0000excused";
const excusedBlank: Reading = {
  value: { kind: "missing", reason: "blank" },
  why: "blank in a case that was excluded or not followed",
};

/** Reads a column once per different text. */
export function readColumn(lines: readonly Line[], task: ColumnTask): ReadColumn {
  const { position, role, facts } = task;
  const reader = readers[role];
  const groups = new Map<string, Group>();
  const perLine = lines.map(({ row, texts }, i) => {
    const cell = row.cells[position] ?? blank;
    const text = texts[position] ?? "";
    const excused = text === "" && task.excused?.has(i);
    const key = excused ? excusedKey : keyOf(cell);
    let group = groups.get(key);
    if (!group) {
      group = { reading: excused ? excusedBlank : reader(text, facts, cell), raw: cell.text, text, rows: [] };
      groups.set(key, group);
    }
    group.rows.push(row.number);
    return group;
  });
  return settle(lines, perLine, [...groups.values()], task);
}

function keyOf(cell: RawCell): string {
  if (cell.number === undefined && cell.date === undefined && cell.boolean === undefined && !cell.error)
    return cell.text;
  return `${cell.text}\u0000${cell.number === undefined ? "" : "n"}${cell.date === undefined ? "" : "d"}${cell.boolean === undefined ? "" : "b"}${cell.error ? "e" : ""}`;
}

function settle(
  lines: readonly Line[],
  perLine: readonly Group[],
  groups: readonly Group[],
  task: ColumnTask,
): ReadColumn {
  const { facts, redact, answers } = task;
  const questions = new Map<string, { -readonly [K in keyof Question]: Question[K] }>();
  const settled = new Map<Group, { value: Value; open: boolean }>();
  const log: LogEntry[] = [];
  const issues: SheetIssue[] = [];
  const record = (group: Group, rows: readonly number[], value: Value, why: string): void => {
    log.push({ row: rows[0]!, rows, column: facts.name, from: redact(group.raw), to: redact(showValue(value)), why });
  };
  for (const group of groups) {
    const { asks, value, why } = group.reading;
    if (!asks) {
      settled.set(group, { value, open: false });
      if (why) record(group, group.rows, value, why);
      else if (group.raw !== group.text) record(group, group.rows, value, "spaces or invisible signs removed");
      continue;
    }
    const id = redact(questionId(facts.name, asks.topic, asks.text));
    const answered = answerTo(id, asks.choices, group, task, issues);
    if (answered) {
      settled.set(group, { value: answered.value, open: false });
      record(group, group.rows, answered.value, `answered: ${answered.label}`);
      continue;
    }
    settled.set(group, { value: asks.meanwhile ?? { kind: "asked", question: id }, open: true });
    addQuestion(questions, id, group, facts.name, redact);
  }
  const openLines = new Set<number>();
  const values = perLine.map((group, i) => {
    const { value, open } = settled.get(group)!;
    const asks = group.reading.asks;
    if (!asks) return value;
    const id = `${redact(questionId(facts.name, asks.topic, asks.text))} @ ${task.keys[i]}`;
    const own = Object.hasOwn(answers, id) ? answerTo(id, asks.choices, group, task, issues) : undefined;
    if (own) {
      const row = lines[i]!.row.number;
      record(group, [row], own.value, `answered for this case: ${own.label}`);
      if (open) closeRow(questions, id.slice(0, id.lastIndexOf(" @ ")), row);
      return own.value;
    }
    if (open) openLines.add(i);
    return value;
  });
  return { values, questions: [...questions.values()].filter(({ rows }) => rows.length > 0), log, openLines, issues };
}

type OpenQuestion = { -readonly [K in keyof Question]: Question[K] };

function addQuestion(
  questions: Map<string, OpenQuestion>,
  id: string,
  group: Group,
  column: string,
  redact: Redact,
): void {
  const asks = group.reading.asks!;
  const labels = asks.choices.map(({ label }) => redact(label));
  const known = questions.get(id);
  if (known) {
    known.rows = [...known.rows, ...group.rows].toSorted((a, b) => a - b);
    known.choices = [...new Set([...known.choices, ...labels])];
  } else
    questions.set(id, {
      id,
      rows: group.rows,
      column,
      text: redact(asks.text),
      asks: redact(asks.sentence),
      choices: [...new Set(labels)],
    });
}

function closeRow(questions: Map<string, OpenQuestion>, id: string, row: number): void {
  const question = questions.get(id);
  if (question) question.rows = question.rows.filter((each) => each !== row);
}

/** The choice an answer names, or its text read like a cell; anything else is collected as an issue. */
function answerTo(
  id: string,
  choices: readonly Choice[],
  group: Group,
  task: ColumnTask,
  issues: SheetIssue[],
): Choice | undefined {
  if (!Object.hasOwn(task.answers, id)) return undefined;
  const answer = task.answers[id]!;
  const chosen = choices.find(({ label }) => task.redact(label).toLowerCase() === answer.trim().toLowerCase());
  if (chosen) return chosen;
  const read = readers[task.role](answer.trim(), task.facts, { text: answer });
  if (!read.asks && answer.trim() !== "" && read.value.kind !== "missing")
    return { label: answer.trim(), value: read.value };
  const labels = choices.map(({ label }) => `"${task.redact(label)}"`).join(", ");
  issues.push({
    row: group.rows[0]!,
    column: task.facts.name,
    value: answer,
    rule: `the answer to "${id}" must be one of ${labels}, or a plain value of the column`,
  });
  return undefined;
}
