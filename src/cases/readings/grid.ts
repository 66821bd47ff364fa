import { readMissing } from "../values/read-missing.js";
import { SheetError, type SheetIssue } from "../sheet-error.js";
import type { RawSheet } from "../types.js";
import type { Radiograph } from "./types.js";

/** Readings as text, one row a radiograph, one column a heading; null where none was made. */
export interface ReadingGrid {
  readonly radiographs: readonly Radiograph[];
  readonly headings: readonly string[];
  /** Text and 1-based row of each reading. */
  readonly cells: readonly (readonly ({ readonly text: string; readonly row: number } | null)[])[];
  readonly notes: readonly string[];
}

const idWords =
  /^(id|ids|no\.?|nr\.?|number|key|#|image|radiograph|film|x-?ray|case|patient|child|limb|shoulder|subject)\b/i;
const raterWords = /^(rater|observer|reader|assessor|who read|read by)\b/i;
const occasionWords = /^(occasion|reading no|round|time|session|visit)\b/i;
const valueWords = /^(grade|reading|value|measurement|angle|displacement|result|score)\b/i;
const otherWords = /^(notes?|remarks?|comments?|date|age|sex|side|view)\b/i;

/**
 * Lays out the readings of a file: a column a rater, or (with columns rater and grade or reading) a row a reading.
 * @throws SheetError with every issue of layout: no heading, fewer than two columns of readings, repeated radiographs
 */
export function readingGrid(sheet: RawSheet): ReadingGrid {
  const rows = sheet.rows.filter((row) => row.cells.some((cell) => cell.text.trim() !== ""));
  const heading = rows[0];
  if (!heading || rows.length < 2)
    throw new SheetError(sheet.file, [{ rule: "must hold a heading row and at least one radiograph" }]);
  const names = trimmedEnd(heading.cells.map((cell) => cell.text.trim()));
  if (names.filter((name) => name !== "").every((name) => /^[-+\d.,°%]+$/.test(name)))
    throw new SheetError(sheet.file, [
      { row: heading.number, rule: "the first row must name the raters, but it holds numbers only" },
    ]);
  const issues = headingIssues(names, heading.number);
  for (const row of rows.slice(1)) {
    const extra = row.cells.findIndex((cell, j) => j >= names.length && cell.text.trim() !== "");
    if (extra >= 0)
      issues.push({
        row: row.number,
        value: row.cells[extra]!.text,
        rule: `has more cells than the ${names.length} headings`,
      });
  }
  if (issues.length > 0) throw new SheetError(sheet.file, issues);
  const data = rows
    .slice(1)
    .map((row) => ({ number: row.number, cells: names.map((_, j) => row.cells[j]?.text.trim() ?? "") }));
  const place = (words: RegExp): number => names.findIndex((name) => words.test(name));
  const long = place(raterWords);
  const isLong = long >= 0 && !/\d/.test(names[long]!) && place(valueWords) >= 0 && place(idWords) >= 0;
  return isLong ? fromLong(sheet.file, names, data, place) : fromWide(sheet.file, names, data, place(idWords));
}

interface Row {
  readonly number: number;
  readonly cells: readonly string[];
}

function headingIssues(names: readonly string[], row: number): SheetIssue[] {
  return names.flatMap((name, j): SheetIssue[] => {
    if (name === "") return [{ row, rule: `column ${j + 1} must have a heading` }];
    return names.indexOf(name) < j ? [{ row, column: name, rule: "every heading must be different" }] : [];
  });
}

function fromWide(file: string, names: readonly string[], data: readonly Row[], id: number): ReadingGrid {
  const others = names.flatMap((name, j) => (j !== id && otherWords.test(name) ? [j] : []));
  const kept = names.flatMap((_, j) => (j !== id && !others.includes(j) ? [j] : []));
  if (kept.length < 2)
    throw new SheetError(file, [
      { rule: `must have readings of at least two raters, one column each; found ${kept.length}: ${names.join(", ")}` },
    ]);
  const radiographs = data.map((row) => ({
    id: id >= 0 && row.cells[id] !== "" ? row.cells[id]! : `row ${row.number}`,
    row: row.number,
  }));
  const repeated = radiographs.flatMap((radiograph, i): SheetIssue[] => {
    const first = radiographs.findIndex((each) => each.id === radiograph.id);
    return first < i
      ? [
          {
            row: radiograph.row,
            column: names[id]!,
            value: radiograph.id,
            rule: `a radiograph must have one row, it is also in row ${radiographs[first]!.row}`,
          },
        ]
      : [];
  });
  if (repeated.length > 0) throw new SheetError(file, repeated);
  const notes = [
    id >= 0
      ? `Radiographs are named by the column ${names[id]!}.`
      : "No column names the radiographs, so their rows do.",
    ...(others.length > 0 ? [`Not read: ${others.map((j) => names[j]!).join(", ")}.`] : []),
  ];
  const cells = data.map((row) => kept.map((j) => cellOf(row.cells[j]!, row.number)));
  return { radiographs, headings: kept.map((j) => names[j]!), cells, notes };
}

function fromLong(
  file: string,
  names: readonly string[],
  data: readonly Row[],
  place: (words: RegExp) => number,
): ReadingGrid {
  const [id, rater, value, occasion] = [place(idWords), place(raterWords), place(valueWords), place(occasionWords)];
  const radiographs = new Map<
    string,
    { id: string; row: number; found: Map<string, { text: string; row: number } | null> }
  >();
  const headings: string[] = [];
  const issues: SheetIssue[] = [];
  for (const { number: row, cells } of data) {
    for (const j of [id, rater])
      if (cells[j] === "") issues.push({ row, column: names[j]!, rule: "must not be empty when a row is one reading" });
    const heading = occasion >= 0 && cells[occasion] !== "" ? `${cells[rater]!} ${cells[occasion]!}` : cells[rater]!;
    if (!headings.includes(heading)) headings.push(heading);
    const radiograph = radiographs.get(cells[id]!) ?? { id: cells[id]!, row, found: new Map() };
    radiographs.set(cells[id]!, radiograph);
    if (radiograph.found.has(heading))
      issues.push({ row, column: names[rater]!, value: heading, rule: `must read radiograph ${cells[id]!} once` });
    radiograph.found.set(heading, cellOf(cells[value]!, row));
  }
  if (headings.length < 2)
    issues.push({ column: names[rater]!, rule: `must name at least two raters, found ${headings.length}` });
  if (issues.length > 0) throw new SheetError(file, issues);
  const all = [...radiographs.values()];
  return {
    radiographs: all.map((each) => ({ id: each.id, row: each.row })),
    headings,
    cells: all.map((each) => headings.map((heading) => each.found.get(heading) ?? null)),
    notes: [`One row is one reading: ${names[id]!}, ${names[rater]!}, ${names[value]!}.`],
  };
}

function cellOf(text: string, row: number): { text: string; row: number } | null {
  return readMissing(text) ? null : { text, row };
}

function trimmedEnd(names: readonly string[]): string[] {
  return names.slice(0, names.findLastIndex((name) => name !== "") + 1);
}
