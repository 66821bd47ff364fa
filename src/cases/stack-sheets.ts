import { placesOf } from "./ask-tables.js";
import { overflowing } from "./table/add-column.js";
import { movedLine } from "./table/moved-line.js";
import { namesInText } from "./names-in-text.js";
import { isPlainName } from "./plain-words.js";
import type { Redact } from "./quarantine.js";
import { findTable, lineText, type AsideLine, type FoundTable, type Line } from "./table/find-table.js";
import type { Answers, Question, RawCell, RawRow, RawSheet } from "./types.js";

export const sheetsId = "sheets with the same heading";
const onlyThis = "only this sheet";
const stackAll = "all of them, one under the other";
const sheetColumn = "Sheet";

/** Where the rows of one sheet stand among those of a stack: its row 1 has the number `first`. */
export interface StackedPart {
  readonly name: string;
  readonly first: number;
  readonly last: number;
}

/** Other sheets of the workbook whose heading is, in two of three names at least, that of the sheet that was read. */
export function siblingsOf(
  sheet: RawSheet,
  main: FoundTable,
): { readonly sheet: RawSheet; readonly found: FoundTable }[] {
  const named = main.names.filter((name) => name !== "").length;
  return (sheet.others ?? []).flatMap((other) => {
    const found = findTable(other);
    const own = found.names.filter((name) => name !== "").length;
    const shared = placesOf(found, main.names).length;
    const alike = found.headingRows.length > 0 && found.lines.length > 0 && shared >= 3;
    return alike && shared * 3 >= Math.min(named, own) * 2 ? [{ sheet: other, found }] : [];
  });
}

/** The question whether the sheets with the same heading are read together. */
export function askSheets(sheet: RawSheet, siblings: readonly RawSheet[], redact: Redact): Question[] {
  if (siblings.length === 0) return [];
  const shown = (name = "", i = 0): string => (isPlainName(name) ? `"${redact(name)}"` : `number ${i + 1}`);
  const names = siblings.map(({ sheetName }, i) => shown(sheetName, i + 1)).join(", ");
  const these = siblings.length === 1 ? `the sheet ${names} has` : `the sheets ${names} have`;
  return [
    {
      ...{ id: sheetsId, rows: [], column: "", text: names.replaceAll('"', "") },
      asks: `${these} the heading of ${shown(sheet.sheetName)}, which alone was read: do they hold further cases?`,
      choices: [onlyThis, stackAll],
    },
  ];
}

export function asksForStack(answers: Answers): boolean {
  return Object.hasOwn(answers, sheetsId) && answers[sheetsId] === stackAll;
}

export interface Stack {
  readonly sheet: RawSheet;
  readonly found: FoundTable;
  readonly parts: readonly StackedPart[];
}

/** Sheets of one heading as one table: columns matched by name, the name of the sheet in a column of its own. */
export function stackSheets(
  sheet: RawSheet,
  main: FoundTable,
  siblings: readonly { readonly sheet: RawSheet; readonly found: FoundTable }[],
): Stack {
  const names = [...main.names, sheetColumn];
  const at = main.names.length;
  const rows: RawRow[] = [];
  const lines: Line[] = [];
  const setAside: AsideLine[] = [];
  const tables = [...main.tables];
  const parts: StackedPart[] = [];
  const all = [
    { sheet, found: main, places: undefined },
    ...siblings.map((one) => ({ ...one, places: placesFor(one.found, names) })),
  ];
  for (const { sheet: part, found, places } of all) {
    const offset = rows.at(-1)?.number ?? 0;
    const typed = part.sheetName ?? "";
    // Names of people get a letter each; any other name that could be one gets a number.
    const name = isPlainName(typed) || namesInText([typed]).length > 0 ? typed : `sheet ${parts.length + 1}`;
    const renumbered = (line: Line): Line => ({ ...line, row: { ...line.row, number: line.row.number + offset } });
    const asCase = (line: Line): Line =>
      withSheet(places ? movedLine(line, places) : overflowing(line, at, names.length), at, name);
    const caseLines = found.lines.map(renumbered).map(asCase);
    const byNumber = new Map(caseLines.map((line) => [line.row.number, line.row]));
    for (const row of part.rows)
      rows.push(byNumber.get(row.number + offset) ?? { ...row, number: row.number + offset });
    for (const line of caseLines) lines.push(line);
    for (const each of found.setAside) setAside.push({ ...each, row: each.row + offset, line: renumbered(each.line) });
    if (places) {
      setAside.push(...headingLines(part, found, offset));
      tables.push(...found.tables.map((table) => ({ ...table, lines: table.lines.map(renumbered) })));
    }
    parts.push({ name, first: offset + 1, last: rows.at(-1)?.number ?? offset });
  }
  const stacked = { ...sheet, rows, otherSheets: sheetsLeft(sheet, siblings) };
  return {
    sheet: stacked,
    found: { headingRows: main.headingRows, names, lines, setAside, tables, merged: main.merged },
    parts,
  };
}

/** Columns of a further sheet under the names of the stack; those that are new are added to it. */
function placesFor(found: FoundTable, names: string[]): (readonly [number, number])[] {
  const places = [...placesOf(found, names)];
  found.names.forEach((name, from) => {
    if (name === "" || places.some(([known]) => known === from)) return;
    places.push([from, names.length]);
    names.push(names.includes(name) ? `${name} (${names.length + 1})` : name);
  });
  return places;
}

function withSheet({ row, texts }: Line, at: number, name: string): Line {
  const cells: RawCell[] = [...row.cells];
  const said = [...texts];
  cells[at] = { text: name };
  for (let c = said.length; c < at; c++) said[c] = "";
  said[at] = name;
  return { row: { ...row, cells }, texts: said };
}

function headingLines(part: RawSheet, { headingRows }: FoundTable, offset: number): AsideLine[] {
  return part.rows
    .filter(({ number }) => headingRows.includes(number))
    .map((row): AsideLine => {
      const texts = row.cells.map(({ text }) => text.trim());
      const line = { row: { ...row, number: row.number + offset }, texts };
      return {
        row: row.number + offset,
        text: lineText(texts),
        why: "heading of a further sheet",
        line,
        doubtful: false,
      };
    });
}

/** Names of the sheets that were neither read nor have the heading of the cases. */
export function sheetsLeft(sheet: RawSheet, siblings: readonly { readonly sheet: RawSheet }[]): string[] {
  const read = new Set(siblings.map(({ sheet: { sheetName } }) => sheetName));
  return (sheet.otherSheets ?? []).filter((name) => !read.has(name));
}

export const numbersId = "numbers over sheets";
const anew = "numbered anew in each sheet";
const sameChild = "equal numbers are the same child";

/** Whether the sheets of a stack use the same numbers for cases, and the question what that means; until the answer, anew. */
export function numbersOver(
  { found, parts }: Stack,
  idColumn: number | undefined,
  answers: Answers,
): { readonly anew: boolean; readonly questions: readonly Question[] } {
  const sets = parts.map(({ first, last }) => {
    const own = found.lines.filter(({ row: { number } }) => number >= first && number <= last);
    return new Set(own.map(({ texts }) => (idColumn === undefined ? "" : (texts[idColumn] ?? ""))).values());
  });
  const seen = new Set<string>();
  let shared = 0;
  for (const set of sets)
    for (const id of set) {
      if (id !== "" && seen.has(id)) shared++;
      seen.add(id);
    }
  const smallest = Math.min(...sets.map(({ size }) => size));
  if (idColumn === undefined || shared < smallest / 2) return { anew: false, questions: [] };
  const answer = Object.hasOwn(answers, numbersId) ? answers[numbersId] : undefined;
  const question: Question = {
    ...{ id: numbersId, rows: [], column: found.names[idColumn] ?? "", text: "" },
    asks: `${shared} case numbers stand in more than one sheet: is each sheet numbered anew, or are they the same children?`,
    choices: [anew, sameChild],
  };
  return { anew: answer !== sameChild, questions: answer === anew || answer === sameChild ? [] : [question] };
}
