import { readText } from "../../cases/reading/read-text.js";
import { SheetError, type SheetIssue } from "../../cases/sheet-error.js";
import type { PublishedGrade, PublishedSeries } from "../../stats/series/series-rates.js";

/** Columns of a file of published counts, in any order. */
const columns = ["series", "grade", "successes", "cases"] as const;
/** A column that a file may have: then a row is one technique of a grade, and the techniques are added up. */
const TECHNIQUE = "technique";
type Column = (typeof columns)[number] | typeof TECHNIQUE;

export interface SeriesFile {
  readonly series: readonly PublishedSeries[];
  /** What a person should know: columns not used, quotation marks taken as text. */
  readonly remarks: readonly string[];
}

/**
 * Published counts from a text file: a heading row with series, grade, successes and cases, then one row a series and
 * grade, or one row a technique of it as `denominator counts` writes them. An empty count, or "not stated", is one that
 * the paper does not give.
 * @throws SheetError with every wrong cell: file, row, column, rule
 */
export function readPublishedSeries(bytes: Uint8Array, file: string): SeriesFile {
  const { rows, remarks = [] } = readText(bytes, file);
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
  const places = [...columns, TECHNIQUE].map((column) => {
    const found = heading.filter((text) => text === column).length;
    if (found === 0 && column !== TECHNIQUE) issues.push({ row, column, rule: "must be in the heading" });
    if (found > 1) issues.push({ row, column, rule: "must be in the heading once" });
    return [column, heading.indexOf(column)] as const;
  });
  if (issues.length > 0) throw new SheetError(file, issues);
  return Object.fromEntries(places) as Record<Column, number>;
}

interface SeriesRow extends PublishedGrade {
  readonly number: number;
  readonly name: string;
  readonly technique: string;
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
  return { name: cell("series"), grade: cell("grade"), technique: cell(TECHNIQUE), successes, cases };
}

function checkRepeats(rows: readonly SeriesRow[], issues: SheetIssue[]): void {
  const first = new Map<string, number>();
  for (const { number, name, grade, technique } of rows) {
    if (name === "" || grade === "") continue;
    const key = JSON.stringify([name, grade, technique]);
    const before = first.get(key);
    if (before === undefined) first.set(key, number);
    else {
      const what = technique === "" ? "once" : `once with technique "${technique}"`;
      const rule = `must stand ${what} in series "${name}", and row ${before} has it already`;
      issues.push({ row: number, column: "grade", value: grade, rule });
    }
  }
}

function bySeries(rows: readonly SeriesRow[]): PublishedSeries[] {
  const distinct = (values: readonly string[]): string[] => [...new Set(values)];
  return distinct(rows.map(({ name }) => name)).map((name) => {
    const own = rows.filter((row) => row.name === name);
    return {
      name,
      grades: distinct(own.map(({ grade }) => grade)).map((grade) => together(grade, own)),
    };
  });
}

/** A grade's counts over its techniques; not stated when one of them is not. */
function together(grade: string, rows: readonly SeriesRow[]): PublishedGrade {
  const add = (count: "successes" | "cases"): number | null =>
    rows
      .filter((row) => row.grade === grade)
      .reduce<number | null>((sum, row) => (sum === null || row[count] === null ? null : sum + row[count]), 0);
  return { grade, successes: add("successes"), cases: add("cases") };
}
