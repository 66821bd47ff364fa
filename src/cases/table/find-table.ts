import { cleanText } from "../reading/clean-text.js";
import type { RawRow, RawSheet, SetAside } from "../types.js";
import { fillMerged, type MergedCell } from "./fill-merged.js";
import { findHeading } from "./find-heading.js";
import { headingRole } from "./heading-words.js";
import { nameColumns } from "./name-columns.js";
import { commonShapes } from "./line-shapes.js";
import { rightTable, type RightTable } from "./right-table.js";
import { secondTables } from "./second-tables.js";
import { doubtful, sortLines } from "./sort-lines.js";

/** One line of the table: the raw row and its cleaned texts, one for each column of the sheet. */
export interface Line {
  readonly row: RawRow;
  readonly texts: readonly string[];
}

/** Where the table stands in a sheet; every row of the sheet is a heading, a line or set aside. */
export interface FoundTable {
  readonly headingRows: readonly number[];
  /** One name a column position; "" for a column that has neither name nor data. */
  readonly names: readonly string[];
  readonly lines: readonly Line[];
  readonly setAside: readonly AsideLine[];
  /** Other tables of the sheet, which are no cases unless a person says so. */
  readonly tables: readonly AsideTable[];
  /** Cells below the heading that are merged downwards: their value holds for all their rows. */
  readonly merged: readonly MergedCell[];
}

/** A line that is no case, with the reason; `doubtful` when a person should confirm it. */
export interface AsideLine extends SetAside {
  readonly line: Line;
  readonly doubtful: boolean;
}

/** Another table of the sheet: below the cases, or to their right after an empty column. */
export interface AsideTable {
  readonly place: "below" | "right";
  /** Names of its columns by position, where its first line or the heading of the cases gives them. */
  readonly names: readonly string[];
  readonly lines: readonly Line[];
  /** Its heading, or else its first line, in words. */
  readonly text: string;
  /** The line above it when that is a single cell, else "". */
  readonly title: string;
}

/**
 * Finds heading and cases of a sheet; lines that are neither are set aside with the reason.
 * @param options.keepRight true when a table to the right is known to be part of the cases
 */
export function findTable(given: RawSheet, options: { readonly keepRight?: boolean } = {}): FoundTable {
  const raw = given.rows.map((row) => row.cells.map((cell) => cleanText(cell.text)));
  const heading = findHeading(raw.slice(0, 500));
  const { sheet, merged } = fillMerged(given, heading.rows.at(-1) ?? -1);
  const grid = merged.length === 0 ? raw : sheet.rows.map((row) => row.cells.map((cell) => cleanText(cell.text)));
  const headingNumbers = heading.rows.map((r) => sheet.rows[r]!.number);
  const headingTexts = heading.rows.map((r) => grid[r]!);
  const named = nameColumns(headingTexts, headingNumbers, sheet.merges);
  const top = heading.rows.at(-1) ?? -1;
  const below = grid.slice(top + 1);
  const idColumn = idColumnOf(named);
  const width =
    named.filter((name) => name !== "").length || Math.max(0, ...grid.slice(0, 500).map((row) => row.length));
  const context = { heading: headingTexts, idColumn, width, shapes: commonShapes(below, idColumn) };
  const seconds = heading.rows.length === 0 ? [] : secondTables(below, context);
  const elsewhere = new Set(seconds.flatMap(({ lines }) => lines));
  const main = seconds.length === 0 ? below : below.map((texts, i) => (elsewhere.has(i) ? [] : texts));
  const right =
    options.keepRight || heading.rows.length === 0 ? undefined : rightTable(named, main, grid.slice(0, top));
  const names = right ? named.slice(0, right.from) : named;
  const cut = right ? main.map((texts) => texts.slice(0, right.from)) : main;
  const reasons = sortLines(cut, right ? { ...context, width: names.filter((name) => name !== "").length } : context);

  const lines: Line[] = [];
  const setAside: AsideLine[] = [];
  sheet.rows.forEach((row, r) => {
    if (heading.rows.includes(r)) return;
    const i = r - top - 1;
    const texts = r > top && !elsewhere.has(i) ? cut[i]! : grid[r]!;
    const why = r < top ? reasonAbove(texts) : elsewhere.has(i) ? tableBelow : reasons[i];
    if (why === undefined) lines.push({ row, texts });
    else {
      const whole = { row, texts: grid[r]! };
      const reason = why === "blank line" && lineText(whole.texts) !== "" ? tableRight : why;
      setAside.push({
        row: row.number,
        text: lineText(whole.texts),
        why: reason,
        line: whole,
        doubtful: doubtful.has(why),
      });
    }
  });
  const lineOf = (i: number): Line => ({ row: sheet.rows[top + 1 + i]!, texts: below[i]! });
  const tables = seconds.map(({ lines: held, headed }) =>
    tableOf("below", held.map(lineOf), { headed, title: titleAbove(below, held[0]!) }),
  );
  if (right) tables.push(tableAt(right, named, right.lines.map(lineOf)));
  return { headingRows: headingNumbers, names: fillNames(names, lines), lines, setAside, tables, merged };
}

const tableBelow = "another table, below the cases";
const tableRight = "another table, to the right of the cases";

function tableOf(
  place: AsideTable["place"],
  lines: readonly Line[],
  { headed, title }: { readonly headed: boolean; readonly title: string },
): AsideTable {
  const text = lineText(lines[0]!.texts);
  return headed
    ? { place, title, names: lines[0]!.texts, lines: lines.slice(1), text }
    : { place, title, names: [], lines, text };
}

/** The line above a table when it is a single cell. */
function titleAbove(below: readonly (readonly string[])[], first: number): string {
  let i = first - 1;
  while (i >= 0 && lineText(below[i]!) === "") i--;
  const held = (below[i] ?? []).filter((text) => text !== "");
  return held.length === 1 ? held[0]! : "";
}

/** A table to the right has its names in the heading of the cases, or else in its own first line. */
function tableAt({ from }: RightTable, named: readonly string[], held: readonly Line[]): AsideTable {
  const lines = held.map(({ row, texts }) => ({ row, texts: texts.map((text, c) => (c < from ? "" : text)) }));
  const names = named.map((name, c) => (c < from ? "" : name.replace(/ \(\d+\)$/, "")));
  if (names.every((name) => name === ""))
    return tableOf("right", lines, { headed: !/(^|\| )\S{1,2}( \||$)/.test(lineText(lines[0]!.texts)), title: "" });
  return { place: "right", title: "", names, lines, text: lineText(names) };
}

function reasonAbove(texts: readonly string[]): string {
  if (texts.every((text) => text === "")) return "blank line";
  return /^sep=.$/i.test(texts.join("")) || texts[0]?.toLowerCase() === "sep="
    ? "separator line"
    : "title or note above the heading";
}

/** The column that names the cases: by heading, study number before child before record. */
function idColumnOf(names: readonly string[]): number | undefined {
  const roles = names.map((name) => headingRole(name.split(": ").at(-1)!) ?? headingRole(name));
  for (const role of ["id", "child", "identifier"] as const) if (roles.includes(role)) return roles.indexOf(role);
  return undefined;
}

/**
 * A column with data but no heading is named by its place. Fields past the heading in few lines are no column: such a
 * line holds a field too many, and is asked about.
 */
function fillNames(names: readonly string[], lines: readonly Line[]): string[] {
  const used: number[] = [];
  for (const { texts } of lines)
    for (let c = 0; c < texts.length; c++) if (texts[c] !== "") used[c] = (used[c] ?? 0) + 1;
  const named = names.findLastIndex((name) => name !== "") + 1;
  const few = named === 0 ? 0 : Math.max(1, lines.length * 0.3);
  const enough = (c: number): boolean => (used[c] ?? 0) > (c < named ? 0 : few);
  let width = Math.max(named, used.length);
  while (width > named && !enough(width - 1)) width--;
  return Array.from({ length: width }, (_, c) => {
    const name = names[c] ?? "";
    return name === "" && enough(c) ? `column ${c + 1}` : name;
  });
}

/** What a line says, its filled cells side by side. */
export function lineText(texts: readonly string[]): string {
  return texts.filter((text) => text !== "").join(" | ");
}
