import { readText } from "../../cases/reading/read-text.js";
import { SheetError, type SheetIssue } from "../../cases/sheet-error.js";
import type { PublishedGrade, PublishedSeries } from "../../stats/series/series-rates.js";

/** Columns of a file of published counts, in any order. */
const columns = ["series", "grade", "successes", "cases"] as const;
type Column = (typeof columns)[number];

export interface SeriesFile {
  readonly series: readonly PublishedSeries[];
  /** What a person should know: columns not used, quotation marks taken as text. */
  readonly remarks: readonly string[];
}

/**
 * Published counts from a text file: a heading row with series, grade, successes and cases, then one row a series and
 * grade. An empty count, or "not stated", is one that the paper does not give.
 * @throws SheetError with every wrong cell: file, row, column, rule
 */
export function readSeries(bytes: Uint8Array, file: string): SeriesFile {
  const { rows, remarks } = readText(bytes, file);
  const records = rows
    .map(({ number, cells }) => ({ number, texts: cells.map(({ text }) => text.trim()) }))
    .filter(({ texts }) => texts.some((text) => text !== ""));
  // A file without any text is refused by the reader, so there is a first record.
  const heading = records[0]!;
  const body = records.slice(1);
  const names = heading.texts.map((text) => text.toLowerCase());
  const places = placesOf(names, heading.number, file);
  if (body.length === 0) throw new SheetError(file, [{ rule: "must hold at least one row below the heading" }]);

  const issues: SheetIssue[] = [];
  const read = body.map(({ number, texts }) => {
    const cell = (column: Column): string => texts[places[column]] ?? "";
    return { number, ...rowOf(number, cell, issues) };
  });
  checkRepeats(read, issues);
  if (issues.length > 0) throw new SheetError(file, issues);
  const unused = heading.texts.filter((text, i) => text !== "" && !Object.values(places).includes(i));
  return {
    series: bySeries(read),
    remarks: [...remarks, ...unused.map((name) => `${file}: column "${name}" is not used`)],
  };
}

function placesOf(heading: readonly string[], row: number, file: string): Record<Column, number> {
  const issues: SheetIssue[] = [];
  const places = columns.map((column) => {
    const found = heading.filter((text) => text === column).length;
    if (found === 0) issues.push({ row, column, rule: "must be in the heading" });
    if (found > 1) issues.push({ row, column, rule: "must be in the heading once" });
    return [column, heading.indexOf(column)] as const;
  });
  if (issues.length > 0) throw new SheetError(file, issues);
  return Object.fromEntries(places) as Record<Column, number>;
}

interface SeriesRow extends PublishedGrade {
  readonly number: number;
  readonly name: string;
}

function rowOf(row: number, cell: (column: Column) => string, issues: SheetIssue[]): Omit<SeriesRow, "number"> {
  for (const column of ["series", "grade"] as const)
    if (cell(column) === "") issues.push({ row, column, rule: "must not be empty" });
  const count = (column: "successes" | "cases"): number | null => {
    const text = cell(column);
    if (text === "" || text.toLowerCase() === "not stated") return null;
    const value = /^\d+$/.test(text) ? Number(text) : NaN;
    if (Number.isSafeInteger(value)) return value;
    issues.push({ row, column, value: text, rule: 'must be a whole number of at least 0, or "not stated"' });
    return null;
  };
  const [successes, cases] = [count("successes"), count("cases")];
  if (successes !== null && cases !== null && successes > cases)
    issues.push({ row, column: "successes", value: String(successes), rule: `must be at most the cases (${cases})` });
  return { name: cell("series"), grade: cell("grade"), successes, cases };
}

function checkRepeats(rows: readonly SeriesRow[], issues: SheetIssue[]): void {
  const first = new Map<string, number>();
  for (const { number, name, grade } of rows) {
    if (name === "" || grade === "") continue;
    const key = JSON.stringify([name, grade]);
    const before = first.get(key);
    if (before === undefined) first.set(key, number);
    else
      issues.push({
        row: number,
        column: "grade",
        value: grade,
        rule: `must stand once in series "${name}", and row ${before} has it already`,
      });
  }
}

function bySeries(rows: readonly SeriesRow[]): PublishedSeries[] {
  const names = [...new Set(rows.map(({ name }) => name))];
  return names.map((name) => ({
    name,
    grades: rows.filter((row) => row.name === name).map(({ grade, successes, cases }) => ({ grade, successes, cases })),
  }));
}
