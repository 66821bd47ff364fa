import type { Draft, Place } from "../doubts.js";
import type { Redact } from "../quarantine.js";
import type { Answers, Value } from "../types.js";
import { plainNumber } from "./read-number.js";
import { namesWidth } from "../table/heading-words.js";
import { readColumn, type ReadColumn } from "./read-column.js";

/** A draft before its cells are read. */
export type Unread = Omit<Draft, "values">;

export interface ReadColumnsTask {
  readonly answers: Answers;
  readonly redact: Redact;
  /** Places that a question about the whole row covers; they are not read on their own. */
  readonly covered: readonly Place[];
  readonly onProgress: (done: number, total: number) => void;
}

const notShown: Value = { kind: "missing", reason: "notApplicable" };

/** Reads every column. Complications come last: whether a blank there is a doubt depends on the rest of the row. */
export function readColumns(draft: Unread, task: ReadColumnsTask): ReadColumn[] {
  const { names, roles } = draft;
  let done = 0;
  const read = (k: number, excused?: ReadonlySet<number>): ReadColumn => {
    const column = readOne(draft, k, task, excused);
    task.onProgress(++done, names.length);
    return column;
  };
  const plain = roles.map((role, k) => (role === "complication" ? undefined : read(k)));
  const excused = roles.includes("complication") ? excusedLines(draft, plain) : undefined;
  return plain.map((column, k) => column ?? read(k, excused));
}

function readOne(draft: Unread, k: number, task: ReadColumnsTask, excused?: ReadonlySet<number>): ReadColumn {
  const { lines, roles, facts, positions, cases } = draft;
  if (roles[k] === "identifier")
    return {
      values: lines.map(() => notShown),
      questions: [],
      log: [],
      openLines: new Set(),
      issues: [],
      limbs: new Map(),
    };
  return readColumn(lines, {
    position: positions[k]!,
    role: roles[k]!,
    facts: facts[k]!,
    answers: task.answers,
    answersByCase: Object.keys(task.answers).some((id) => id.includes(" @ ")),
    redact: task.redact,
    cases,
    covered: new Set(task.covered.flatMap(({ line, column }) => (column === k ? [line] : []))),
    ...(excused ? { excused } : {}),
    ...(facts[k]!.width === undefined ? {} : { widths: widthsOf(draft) }),
  });
}

/** Width of the bone in each line, as the column named for it says. */
function widthsOf({ lines, names, positions, facts }: Unread): (number | undefined)[] {
  const k = names.findIndex((name) => namesWidth(name));
  return lines.map(({ texts }) => {
    const number = plainNumber((texts[positions[k]!] ?? "").replace(/ ?mm$/i, ""), facts[k]!.decimalComma);
    return typeof number === "number" ? number : undefined;
  });
}

/** Lines of cases that were excluded, lost or died: nobody looked for complications there. */
function excusedLines({ names, lines }: Unread, read: readonly (ReadColumn | undefined)[]): Set<number> {
  const out = new Set<number>();
  read.forEach((column, k) => {
    if (!column) return;
    const exclusion = /exclu/i.test(names[k]!);
    for (let i = 0; i < lines.length; i++)
      if (gone(column.values[i]!) || (exclusion && stated(column.values[i]!))) out.add(i);
  });
  return out;
}

function gone(value: Value): boolean {
  return value.kind === "missing" && (value.reason === "lost" || value.reason === "died");
}

function stated(value: Value): boolean {
  if (value.kind === "yesNo") return value.yes;
  return value.kind === "text" && !/^(none|no|n|0|nil|not excluded|included|eligible)$/i.test(value.text);
}
