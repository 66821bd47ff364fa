import { cleanText } from "../reading/clean-text.js";
import type { RawRow, RawSheet, SetAside } from "../types.js";
import { findHeading } from "./find-heading.js";
import { headingRole } from "./heading-words.js";
import { nameColumns } from "./name-columns.js";
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
}

/** A line that is no case, with the reason; `doubtful` when a person should confirm it. */
export interface AsideLine extends SetAside {
  readonly line: Line;
  readonly doubtful: boolean;
}

/** Finds heading and cases of a sheet; lines that are neither are set aside with the reason. */
export function findTable(sheet: RawSheet): FoundTable {
  const grid = sheet.rows.map((row) => row.cells.map((cell) => cleanText(cell.text)));
  const heading = findHeading(grid.slice(0, 500));
  const headingNumbers = heading.rows.map((r) => sheet.rows[r]!.number);
  const headingTexts = heading.rows.map((r) => grid[r]!);
  const names = nameColumns(headingTexts, headingNumbers, sheet.merges);
  const top = heading.rows.at(-1) ?? -1;
  const width =
    names.filter((name) => name !== "").length || Math.max(0, ...grid.slice(0, 500).map((row) => row.length));
  const reasons = sortLines(grid.slice(top + 1), { heading: headingTexts, idColumn: idColumnOf(names), width });

  const lines: Line[] = [];
  const setAside: AsideLine[] = [];
  sheet.rows.forEach((row, r) => {
    if (heading.rows.includes(r)) return;
    const line = { row, texts: grid[r]! };
    const why = r < top ? reasonAbove(line.texts) : reasons[r - top - 1];
    if (why === undefined) lines.push(line);
    else setAside.push({ row: row.number, text: lineText(line.texts), why, line, doubtful: doubtful.has(why) });
  });
  return { headingRows: headingNumbers, names: fillNames(names, lines), lines, setAside };
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
