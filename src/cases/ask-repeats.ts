import type { SheetIssue } from "./sheet-error.js";
import { showValue } from "./show-value.js";
import type { Draft } from "./doubts.js";
import type { Redact } from "./quarantine.js";
import type { Answers, Question, SetAside, Value } from "./types.js";
import { questionId } from "./values/read-column.js";

const keepBoth = "different limbs or injuries: keep all";
const keepFirst = "the same case: keep the first";
const keepLast = "the same case: keep the last";
const choices = [keepBoth, keepFirst, keepLast];

/** Repeated cases: open questions, and the lines that an answer drops. Nothing is dropped without one. */
export interface Repeats {
  /** Whether one question about all rows is open: the sheet may have one row a visit. */
  readonly visits: boolean;
  readonly questions: readonly Question[];
  readonly dropped: ReadonlySet<number>;
  readonly setAside: readonly SetAside[];
  readonly issues: readonly SheetIssue[];
}

/** Rows that name the same child and side, on the same date or without one, may be one case typed twice. */
export function askRepeats(
  draft: Draft,
  sides: readonly Value[],
  dates: readonly Value[],
  answers: Answers,
  redact: Redact,
): Repeats {
  const questions: Question[] = [];
  const dropped = new Set<number>();
  const setAside: SetAside[] = [];
  const issues: SheetIssue[] = [];
  const groups = groupsOf(draft, sides);
  const long = groups.length > 1 && groups.flat().length > draft.lines.length * 0.4;
  const rows = groups.flat().map((i) => draft.lines[i]!.row.number);
  for (const group of groups) {
    const question = long ? visitsQuestion(draft, rows) : questionOf(draft, group, sides, dates, redact);
    const answer = Object.hasOwn(answers, question.id) ? answers[question.id]!.trim() : undefined;
    if (answer === undefined) {
      if (!long || questions.length === 0) questions.push(question);
    } else if (!question.choices.includes(answer))
      issues.push({
        row: question.rows[0]!,
        column: question.column,
        value: answer,
        question: question.id,
        rule: `the answer to "${question.id}" must be one of ${choices.map((choice) => `"${choice}"`).join(", ")}`,
      });
    if (answer !== keepFirst && answer !== keepLast) continue;
    const kept = answer === keepFirst ? group[0]! : group.at(-1)!;
    for (const i of group) {
      if (i === kept) continue;
      dropped.add(i);
      const why = `the same case as row ${draft.lines[kept]!.row.number}, as answered`;
      setAside.push({ row: draft.lines[i]!.row.number, text: question.text, why });
    }
  }
  return { visits: long && questions.length > 0, questions, dropped, setAside, issues };
}

/** Most children stand in several rows: the sheet has one row a visit, which is asked once. */
function visitsQuestion(draft: Draft, rows: readonly number[]): Question {
  const column = draft.names[Math.max(0, draft.roles.indexOf("id"))]!;
  const asks =
    "many cases stand in several rows: the same case repeated, one row a visit or finding, or cases of their own?";
  return {
    id: visitsId(column),
    rows: rows.toSorted((a, b) => a - b),
    column,
    text: "",
    asks,
    choices: [...choices, ...restartColumns(draft).map((k) => anewIn(draft.names[k]!))],
  };
}

function visitsId(column: string): string {
  return questionId(column, "several rows a case", "");
}

function anewIn(name: string): string {
  return `other children: numbered anew in each ${name}`;
}

/** The column named by the answer that numbers start again in each of its values. */
export function restartColumn(
  names: readonly string[],
  idName: string | undefined,
  answers: Answers,
): number | undefined {
  const answer = idName === undefined ? undefined : answers[visitsId(idName)];
  const k = answer === undefined ? -1 : names.findIndex((name) => anewIn(name) === answer);
  return k < 0 ? undefined : k;
}

const mostParts = 12;
const timeWords = /\b(visit|review|month|week|time|follow|fu|seen|exam\w*|occasion)\b/i;

/** Columns with a few values, such as centres, within which no number stands twice for one side. */
function restartColumns(draft: Draft): number[] {
  const side = draft.roles.indexOf("side");
  return draft.roles.flatMap((role, k) => {
    if (role !== "other" || timeWords.test(draft.names[k]!) || draft.facts[k]!.values === "yesNo") return [];
    const texts = draft.lines.map(({ texts: all }) => all[draft.positions[k]!] ?? "");
    const parts = new Set(texts);
    if (parts.size < 2 || parts.size > mostParts || texts.includes("")) return [];
    const keys = draft.lines.map((_, i) => {
      const limb = side < 0 ? "" : sideOf(draft.values[side]![i]);
      return `${draft.cases[i]!.child}\u0000${limb}\u0000${texts[i]}`;
    });
    return new Set(keys).size === keys.length ? [k] : [];
  });
}

/** Lines of one child and side, where more than one. Without any name of the child, rows are cases of their own. */
function groupsOf({ cases }: Draft, sides: readonly Value[]): number[][] {
  const first = new Map<string, number>();
  const groups = new Map<string, number[]>();
  cases.forEach(({ child, typed }, i) => {
    if (typed === "" && /^(child of|row) /.test(child)) return;
    const key = `${child.toLowerCase()}\u0000${sideOf(sides[i])}`;
    const before = first.get(key);
    const group = groups.get(key);
    if (before === undefined) first.set(key, i);
    else if (group) group.push(i);
    else groups.set(key, [before, i]);
  });
  return [...groups.values()];
}

function sideOf(side: Value | undefined): string {
  return side?.kind === "text" ? side.text : "";
}

function questionOf(
  draft: Draft,
  group: readonly number[],
  sides: readonly Value[],
  dates: readonly Value[],
  redact: Redact,
): Question {
  const first = group[0]!;
  const isos = group.map((i) => (dates[i]?.kind === "date" ? dates[i].iso : ""));
  const apart = new Set(isos).size === group.length && !isos.includes("");
  const text = redact(`${draft.cases[first]!.child} ${sideOf(sides[first])}`.trim());
  const column = draft.names[Math.max(0, draft.roles.indexOf("id"))]!;
  const differing = apart ? "" : differences(draft, group, redact);
  return {
    id: questionId(column, "repeated", text),
    rows: group.map((i) => draft.lines[i]!.row.number),
    column,
    text,
    asks: apart
      ? `${text} stands in ${group.length} rows with different dates: several injuries, or visits of one case?`
      : `${text} stands in ${group.length} rows: the same case twice?${differing}`,
    choices,
  };
}

/** The columns in which the rows differ, side by side; identifiers and notes only by name. */
function differences(draft: Draft, group: readonly number[], redact: Redact): string {
  const parts = draft.names.flatMap((name, k) => {
    const role = draft.roles[k]!;
    if (role === "id") return [];
    const texts = group.map((i) => draft.lines[i]!.texts[draft.positions[k]!] ?? "");
    if (new Set(texts).size === 1) return [];
    if (role === "identifier" || role === "note") return [name];
    const values = group.map((i) => draft.values[k]![i]!);
    const shown = values.map((value) => redact(showValue(value)));
    // "150m" and "12,5" are one age; of cells that are asked about nobody knows yet.
    if (new Set(shown).size === 1 && values.every(({ kind }) => kind !== "asked")) return [];
    return [`${name} (${shown.join(", ")})`];
  });
  return parts.length === 0 ? " They say the same in every cell." : ` They differ in ${parts.join(", ")}.`;
}
