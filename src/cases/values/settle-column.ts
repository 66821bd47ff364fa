import { withheld, type Redact } from "../quarantine.js";
import { showValue } from "../show-value.js";
import type { Limbs } from "../split-limbs.js";
import type { Line } from "../table/find-table.js";
import type { SheetIssue } from "../sheet-error.js";
import type { LogEntry, Question, Role, Value } from "../types.js";
import { questionId, type ColumnTask, type Group, type ReadColumn } from "./read-column.js";
import { readers } from "./readers.js";
import type { Asks, Choice } from "./reading.js";

interface Outcome {
  readonly value: Value;
  readonly question?: OpenQuestion;
  readonly limbs?: Limbs;
  readonly ofWidth?: number;
}

interface OpenQuestion {
  readonly id: string;
  readonly text: string;
  readonly asks: string;
  readonly rows: number[];
  readonly cases: string[];
  readonly choices: Set<string>;
}

/** A question about more rows than these is not answered one by one. */
const mostCases = 200;

/** Notes are not repeated in the log, nor are people who operated. */
const hidden: ReadonlySet<Role> = new Set(["note", "operator"]);

/** Gives each group of like cells its value: as read, as answered, or asked; answers for one case come before those for all. */
export function settleColumn(
  lines: readonly Line[],
  perLine: Uint32Array | readonly number[],
  groups: readonly Group[],
  task: ColumnTask,
): ReadColumn {
  const { redact, facts } = task;
  const log: LogEntry[] = [];
  const issues: SheetIssue[] = [];
  const questions = new Map<string, OpenQuestion>();
  const record = ({ raw }: Group, rows: readonly number[], value: Value, why: string): void => {
    const [from, to] = hidden.has(task.role) ? [withheld, withheld] : [redact(raw), redact(showValue(value))];
    log.push({ row: rows[0]!, rows, column: facts.name, from, to, why });
  };
  const outcomes: Outcome[] = [];
  for (const [g, group] of groups.entries()) {
    const { asks, value, why } = group.reading;
    if (!asks) {
      const shown = withheldValue(value, task);
      outcomes[g] = shown === value ? group.reading : { value: shown };
      if (why) record(group, group.rows, shown, why);
      else if (group.raw !== group.text) record(group, group.rows, shown, "spaces or invisible signs removed");
      continue;
    }
    const id = redact(questionId(facts.name, asks.topic, asks.text));
    const answer = answerTo(id, asks.choices, group, task, issues);
    if (answer) {
      record(group, group.rows, answer.value, `answered: ${redact(answer.label)}`);
      outcomes[g] = outcomeOf(answer);
    } else
      outcomes[g] = {
        value: asks.meanwhile ?? { kind: "asked", question: id },
        question: opened(questions, id, asks, redact),
      };
  }
  const openLines = new Set<number>();
  const limbs = new Map<number, Limbs>();
  const values = lines.map(({ row: { number: row } }, i) => {
    const g = perLine[i]!;
    const group = groups[g]!;
    const own = ownAnswer(group, i, task, issues);
    if (own) record(group, [row], own.value, `answered for this case: ${redact(own.label)}`);
    const { value, question, limbs: both, ofWidth } = own ? outcomeOf(own) : outcomes[g]!;
    if (both) limbs.set(i, both);
    if (question) {
      question.rows.push(row);
      if (question.cases.length < mostCases) question.cases.push(task.cases[i]!.id);
      openLines.add(i);
    }
    if (ofWidth !== undefined) return shareOfWidth(ofWidth, task.widths?.[i]);
    return value;
  });
  const asked = [...questions.values()].filter(({ rows }) => rows.length > 0);
  return {
    values,
    questions: asked.map(({ id, text, asks, rows, cases, choices }): Question => ({
      ...{ id, rows, column: facts.name, text, asks, choices: [...choices] },
      ...(cases.length > 1 && cases.length === rows.length ? { cases } : {}),
    })),
    log,
    openLines,
    issues,
    limbs,
  };
}

function outcomeOf({ value, limbs, ofWidth }: Choice): Outcome {
  return { value, ...(limbs ? { limbs } : {}), ...(ofWidth === undefined ? {} : { ofWidth }) };
}

/** A length as a share of the width in the same row; not known where there is none. */
function shareOfWidth(millimetres: number, width: number | undefined): Value {
  if (width === undefined || width <= 0) return { kind: "missing", reason: "unknown" };
  return { kind: "number", number: Number(((millimetres / width) * 100).toPrecision(15)), unit: "percent" };
}

/** The question of a topic, made at its first text; further texts add their choices. */
function opened(questions: Map<string, OpenQuestion>, id: string, asks: Asks, redact: Redact): OpenQuestion {
  const known = questions.get(id) ?? {
    id,
    text: redact(asks.text),
    asks: redact(asks.sentence),
    rows: [],
    cases: [],
    choices: new Set<string>(),
  };
  for (const { label } of asks.choices) known.choices.add(redact(label).trim());
  questions.set(id, known);
  return known;
}

function ownAnswer(group: Group, i: number, task: ColumnTask, issues: SheetIssue[]): Choice | undefined {
  const { asks } = group.reading;
  if (!asks || !task.answersByCase) return undefined;
  const id = `${task.redact(questionId(task.facts.name, asks.topic, asks.text))} @ ${task.cases[i]!.id}`;
  return answerTo(id, asks.choices, group, task, issues);
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
  const answer = task.answers[id]!.trim();
  const chosen = choices.find(({ label }) => task.redact(label).trim().toLowerCase() === answer.toLowerCase());
  if (chosen) return chosen;
  const read = readers[task.role](answer, task.facts, { text: answer });
  if (!read.asks && answer !== "" && read.value.kind !== "missing") return { label: answer, value: read.value };
  const labels = choices.map(({ label }) => `"${task.redact(label)}"`).join(", ");
  issues.push({
    row: group.rows[0]!,
    column: task.facts.name,
    value: answer,
    question: id,
    rule: `the answer to "${id}" must be one of ${labels}, or a plain value of the column`,
  });
  return undefined;
}

const nobody: Value = { kind: "text", text: withheld };

/** Free text may name people: what the identifier columns hold is withheld from it. */
function withheldValue(value: Value, { redact, role }: ColumnTask): Value {
  if (role === "identifier") return value.kind === "missing" ? value : nobody;
  if (value.kind === "text") {
    const text = redact(value.text);
    return text === value.text ? value : { kind: "text", text };
  }
  return value.kind === "list" ? { kind: "list", items: value.items.map(redact) } : value;
}
