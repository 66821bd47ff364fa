import type { Redact } from "./quarantine.js";
import type { SheetIssue } from "./sheet-error.js";
import { showValue } from "./show-value.js";
import type { CaseName } from "./table/identify-cases.js";
import type { Line } from "./table/find-table.js";
import type { Answers, LogEntry, Question, RawSheet, Role, Value } from "./types.js";
import type { ColumnFacts } from "./values/reading.js";

/** The table while it is checked: columns by index, cases by line. Doubts see values; nothing here is shown unredacted. */
export interface Draft {
  readonly sheet: RawSheet;
  readonly lines: readonly Line[];
  readonly names: readonly string[];
  readonly roles: readonly Role[];
  readonly facts: readonly ColumnFacts[];
  /** Zero-based place of each column in the lines' texts. */
  readonly positions: readonly number[];
  /** Values by column, then line. */
  readonly values: readonly (readonly Value[])[];
  readonly cases: readonly CaseName[];
}

/** One place in the draft. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A question that comes from several cells together, and what each answer makes of them. */
export interface Doubt {
  readonly id: string;
  readonly column: string;
  readonly text: string;
  readonly asks: string;
  /** Rows it concerns; none for the whole file. */
  readonly rows: readonly number[];
  /** Cells that count as asked until the answer; empty when the typed values stand meanwhile. */
  readonly blocks: readonly Place[];
  readonly choices: readonly {
    readonly label: string;
    readonly sets?: readonly (Place & { readonly value: Value })[];
  }[];
}

export interface Settled {
  readonly values: readonly (readonly Value[])[];
  readonly questions: readonly Question[];
  readonly log: readonly LogEntry[];
  readonly open: readonly Place[];
  readonly issues: readonly SheetIssue[];
}

/** Applies the answered doubts to the values, and turns the others into questions. */
export function settleDoubts(draft: Draft, doubts: readonly Doubt[], answers: Answers, redact: Redact): Settled {
  const values = draft.values.map((column) => column as Value[]);
  const copied = new Set<number>();
  const set = ({ line, column }: Place, value: Value): void => {
    if (!copied.has(column)) values[column] = [...values[column]!];
    copied.add(column);
    values[column]![line] = value;
  };
  const questions: Question[] = [];
  const log: LogEntry[] = [];
  const open: Place[] = [];
  const issues: SheetIssue[] = [];
  for (const doubt of doubts) {
    const id = redact(doubt.id);
    const labels = doubt.choices.map(({ label }) => redact(label).trim());
    const answer = Object.hasOwn(answers, id) ? answers[id]!.trim().toLowerCase() : undefined;
    const chosen = doubt.choices.find((_, i) => labels[i]!.toLowerCase() === answer);
    if (answer !== undefined && !chosen) issues.push(unknownChoice(id, answers[id]!, labels, doubt));
    if (chosen) {
      for (const place of chosen.sets ?? []) {
        const before = values[place.column]![place.line]!;
        set(place, place.value);
        log.push(entry(draft, place, before, chosen.label, redact));
      }
      continue;
    }
    for (const place of doubt.blocks) {
      set(place, { kind: "asked", question: id });
      open.push(place);
    }
    questions.push({
      id,
      rows: doubt.rows,
      column: doubt.column,
      text: redact(doubt.text),
      asks: redact(doubt.asks),
      choices: labels,
    });
  }
  return { values, questions, log, open, issues };
}

function unknownChoice(id: string, answer: string, labels: readonly string[], doubt: Doubt): SheetIssue {
  const rule = `the answer to "${id}" must be one of ${labels.map((label) => `"${label}"`).join(", ")}`;
  return {
    ...(doubt.rows.length > 0 ? { row: doubt.rows[0]! } : {}),
    ...(doubt.column ? { column: doubt.column } : {}),
    value: answer,
    rule,
    question: id,
  };
}

function entry(
  draft: Draft,
  { line, column, value }: Place & { readonly value: Value },
  before: Value,
  label: string,
  redact: Redact,
): LogEntry {
  const { row, texts } = draft.lines[line]!;
  const raw = texts[draft.positions[column]!] ?? "";
  const from = raw === "" ? showValue(before) : raw;
  return {
    row: row.number,
    rows: [row.number],
    column: draft.names[column]!,
    from: redact(from),
    to: redact(showValue(value)),
    why: `answered: ${redact(label)}`,
  };
}
