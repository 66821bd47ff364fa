import { askFile } from "./ask-file.js";
import { askRepeats, keepFirst, keepLast } from "./ask-repeats.js";
import { quarantine, type Redact } from "./quarantine.js";
import { SheetError, type SheetIssue } from "./sheet-error.js";
import { showValue } from "./show-value.js";
import { findTable, type FoundTable, type Line } from "./table/find-table.js";
import { guessRoles } from "./table/guess-roles.js";
import { identifyCases } from "./table/identify-cases.js";
import {
  roles as knownRoles,
  type Answers,
  type CaseRow,
  type CaseTable,
  type Column,
  type Question,
  type RawSheet,
  type Role,
  type SetAside,
  type Value,
} from "./types.js";
import { columnFacts, type Distinct } from "./values/column-facts.js";
import { negativeHeading } from "./values/read-yes-no.js";
import { readColumn, type ReadColumn } from "./values/read-column.js";
import type { ColumnFacts } from "./values/reading.js";

export interface ReadCasesOptions {
  /** Role by column name, where the guess is wrong. */
  readonly roles?: Readonly<Record<string, Role>>;
  readonly answers?: Answers;
  /** ISO date; two-digit years end with the year after it. Default: the latest year that the sheet names. */
  readonly today?: string;
}

const notShown: Value = { kind: "missing", reason: "notApplicable" };

/**
 * Makes a checked case table of a sheet: finds the table, guesses roles, reads each cell, asks about what only a person can
 * decide, sets aside what is no case. Pure: the sheet is not changed, the same input gives the same table.
 * @throws SheetError when the sheet has no table, a role names an absent column, or an answer fits no choice
 */
export function readCases(sheet: RawSheet, options: ReadCasesOptions = {}): CaseTable {
  const answers = options.answers ?? {};
  const found = findTable(sheet);
  if (found.lines.length === 0)
    throw new SheetError(sheet.file, [{ rule: "holds no cases; expected a heading row and one row a case" }]);
  const positions = found.names.flatMap((name, c) => (name === "" ? [] : [c]));
  const distinct = positions.map((c) => distinctCells(found.lines, c));
  const names = positions.map((c) => found.names[c]!);
  const roles = withChosen(guessRoles(names, distinct, found.lines.length), names, options.roles, sheet.file);
  const redact = quarantine(
    roles.flatMap((role, k) =>
      role === "identifier" ? distinct[k]!.map(({ text }) => text).filter((text) => text !== "") : [],
    ),
  );
  const latestYear = options.today ? Number(options.today.slice(0, 4)) : latestNamed(distinct);
  const facts = names.map((name, k) => columnFacts(name, roles[k]!, distinct[k]!, sheet, latestYear));
  return assemble({ sheet, found, positions, names, roles, facts, redact, answers });
}

interface Parts {
  readonly sheet: RawSheet;
  readonly found: FoundTable;
  readonly positions: readonly number[];
  readonly names: readonly string[];
  readonly roles: readonly Role[];
  readonly facts: readonly ColumnFacts[];
  readonly redact: Redact;
  readonly answers: Answers;
}

function assemble(parts: Parts): CaseTable {
  const { sheet, found, positions, names, roles, redact, answers } = parts;
  const at = (role: Role): number | undefined => {
    const k = roles.indexOf(role);
    return k < 0 ? undefined : positions[k];
  };
  const keysOfLines = found.lines.map(({ texts, row }) =>
    at("id") === undefined ? `row ${row.number}` : texts[at("id")!] || `row ${row.number}`,
  );
  const read = readAll(parts, keysOfLines);
  const sides = read[roles.indexOf("side")]?.values ?? [];
  const cases = identifyCases(
    found.lines,
    optional({ id: at("id"), child: at("child"), person: at("identifier") }, sides),
  );
  const repeats = askRepeats({
    lines: found.lines,
    names: cases,
    sides,
    dates: caseDates(parts, read),
    column: names[roles.indexOf("id")] ?? "",
  });
  const settled = settleRepeats(repeats, answers, found.lines);

  const setAside: SetAside[] = [
    ...found.setAside.map(({ row, text, why }) => ({ row, text: redact(text), why })),
    ...settled.aside,
  ].toSorted((a, b) => a.row - b.row);
  const rows: CaseRow[] = found.lines.flatMap((line, i) =>
    settled.dropped.has(i)
      ? []
      : [
          {
            id: cases[i]!.id,
            child: cases[i]!.child,
            row: line.row.number,
            values: read.map(({ values }) => values[i]!),
          },
        ],
  );
  const open = (question: Question): boolean => !Object.hasOwn(answers, question.id);
  const questions = [
    ...askFile(sheet, setAside, redact).filter(open),
    ...settled.open,
    ...read.flatMap((column) => column.questions),
  ];
  const issues: SheetIssue[] = read.flatMap((column) => column.issues);
  if (issues.length > 0) throw new SheetError(sheet.file, issues);
  return {
    file: sheet.file,
    header: { rows: found.headingRows },
    columns: names.map((name, k) => columnOf(name, k, parts, read[k]!)),
    cases: rows,
    setAside,
    identifiers: names.filter((_, k) => roles[k] === "identifier"),
    questions,
    log: read.flatMap((column) => column.log),
    cells: countCells(parts, read, settled.dropped),
  };
}

/** Complications come last: whether a blank among them is a doubt depends on the rest of the row. */
function readAll(parts: Parts, keys: readonly string[]): ReadColumn[] {
  const { names, roles, found } = parts;
  const plain = names.map((_, k) => (roles[k] === "complication" ? undefined : readOne(parts, k, keys)));
  const excused = excusedLines(names, roles, plain, found.lines.length);
  return plain.map((column, k) => column ?? readOne(parts, k, keys, excused));
}

function readOne(parts: Parts, k: number, keys: readonly string[], excused?: ReadonlySet<number>): ReadColumn {
  const { found, positions, roles, facts, redact, answers } = parts;
  if (roles[k] === "identifier")
    return { values: found.lines.map(() => notShown), questions: [], log: [], openLines: new Set(), issues: [] };
  const task = { position: positions[k]!, role: roles[k]!, facts: facts[k]!, answers, redact, keys };
  return readColumn(found.lines, excused ? { ...task, excused } : task);
}

/** Lines of cases that were excluded, lost or died: nobody looked for complications there. */
function excusedLines(
  names: readonly string[],
  roles: readonly Role[],
  read: readonly (ReadColumn | undefined)[],
  lines: number,
): Set<number> {
  const out = new Set<number>();
  read.forEach((column, k) => {
    if (!column) return;
    const exclusion = /exclu/i.test(names[k]!);
    for (let i = 0; i < lines; i++) {
      const value = column.values[i]!;
      if (value.kind === "missing" && (value.reason === "lost" || value.reason === "died")) out.add(i);
      if (
        exclusion &&
        (value.kind === "text" || (value.kind === "yesNo" && value.yes)) &&
        !(value.kind === "text" && /^(none|no|n|0|nil|included|eligible)$/i.test(value.text))
      )
        out.add(i);
    }
  });
  return roles.includes("complication") ? out : new Set();
}

/** The first date column that is neither birth nor review. */
function caseDates({ names, roles }: Parts, read: readonly ReadColumn[]): readonly Value[] {
  const k = roles.findIndex((role, i) => role === "date" && !/review|follow|last|fu\b|seen/i.test(names[i]!));
  return k < 0 ? [] : read[k]!.values;
}

function settleRepeats(
  repeats: ReturnType<typeof askRepeats>,
  answers: Answers,
  lines: readonly Line[],
): { open: Question[]; dropped: Set<number>; aside: SetAside[] } {
  const open: Question[] = [];
  const dropped = new Set<number>();
  const aside: SetAside[] = [];
  for (const { lines: group, ...question } of repeats) {
    const answer = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined;
    if (answer === undefined) open.push(question);
    const kept = answer === keepFirst ? group[0] : answer === keepLast ? group.at(-1) : undefined;
    if (kept === undefined) continue;
    for (const i of group)
      if (i !== kept) {
        dropped.add(i);
        aside.push({
          row: lines[i]!.row.number,
          text: question.text,
          why: `the same case as row ${lines[kept]!.row.number}, as answered`,
        });
      }
  }
  return { open, dropped, aside };
}

function columnOf(name: string, k: number, { positions, roles, facts, redact }: Parts, read: ReadColumn): Column {
  const role = roles[k]!;
  const hidden = role === "identifier" || role === "note";
  const shown = new Set<string>();
  if (!hidden)
    for (const value of read.values)
      if (value.kind !== "missing" && value.kind !== "asked" && shown.size < 3) shown.add(redact(showValue(value)));
  const sense =
    role === "success" ? { sense: negativeHeading(name) ? ("negative" as const) : ("positive" as const) } : {};
  const unit = facts[k]!.unit;
  return {
    name,
    role,
    position: positions[k]! + 1,
    examples: [...shown],
    ...sense,
    ...(unit === undefined ? {} : { unit }),
  };
}

/** Every cell of the file has one fate; identifiers, headings and lines that are no cases are set aside. */
function countCells(
  { sheet, found, positions, roles }: Parts,
  read: readonly ReadColumn[],
  dropped: ReadonlySet<number>,
): CaseTable["cells"] {
  const all = sheet.rows.reduce((sum, row) => sum + row.cells.length, 0);
  let understood = 0;
  let asked = 0;
  found.lines.forEach(({ row }, i) => {
    if (dropped.has(i)) return;
    positions.forEach((c, k) => {
      if (c >= row.cells.length || roles[k] === "identifier") return;
      if (read[k]!.openLines.has(i)) asked++;
      else understood++;
    });
  });
  return { understood, asked, setAside: all - understood - asked };
}

function distinctCells(lines: readonly Line[], c: number): Distinct[] {
  const known = new Map<string, { -readonly [K in keyof Distinct]: Distinct[K] }>();
  for (const { row, texts } of lines) {
    const cell = row.cells[c] ?? { text: "" };
    const text = texts[c] ?? "";
    const key = cell.number !== undefined || cell.date !== undefined ? `${text}\u0000` : text;
    const found = known.get(key);
    if (found) found.count++;
    else known.set(key, { text, cell, count: 1 });
  }
  return [...known.values()];
}

function withChosen(
  guessed: readonly Role[],
  names: readonly string[],
  chosen: ReadCasesOptions["roles"],
  file: string,
): Role[] {
  const roles = [...guessed];
  const issues: SheetIssue[] = [];
  for (const [name, role] of Object.entries(chosen ?? {})) {
    const k = names.indexOf(name);
    if (k < 0)
      issues.push({
        column: name,
        rule: `is named by the roles but not in the sheet; its columns are ${names.map((each) => `"${each}"`).join(", ")}`,
      });
    else if (!knownRoles.includes(role))
      issues.push({ column: name, value: role, rule: `must have one of the roles ${knownRoles.join(", ")}` });
    else roles[k] = role;
  }
  if (issues.length > 0) throw new SheetError(file, issues);
  return roles;
}

/** The latest four-digit year of dates in the sheet; two-digit years are read against it. */
function latestNamed(columns: readonly (readonly Distinct[])[]): number {
  let latest = 0;
  for (const cells of columns)
    for (const { text } of cells) {
      const year = /^\d{1,2}[./-]\d{1,2}[./-]((?:19|20)\d{2})$|^((?:19|20)\d{2})-\d{2}-\d{2}/.exec(text);
      if (year) latest = Math.max(latest, Number(year[1] ?? year[2]));
    }
  return latest || 2049;
}

function optional(
  columns: { id: number | undefined; child: number | undefined; person: number | undefined },
  sides: readonly Value[],
): Parameters<typeof identifyCases>[1] {
  return {
    ...(columns.id === undefined ? {} : { id: columns.id }),
    ...(columns.child === undefined ? {} : { child: columns.child }),
    ...(columns.person === undefined ? {} : { person: columns.person }),
    sides,
  };
}
