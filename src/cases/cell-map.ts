import type { CaseTable } from "./types.js";

/** What became of a cell: read as it stands, recoded, asked about, empty, withheld, or not part of a case. */
export type CellFate = "read" | "recoded" | "asked" | "missing" | "withheld" | "setAside";

/** One row of a sheet as a strip of fates, one a column. */
export interface CellMapRow {
  readonly row: number;
  readonly fates: readonly CellFate[];
  /** Ids of the open questions that concern the row. */
  readonly questions: readonly string[];
}

/** A picture of the whole sheet for the eye: headings and columns across, one strip a row. */
export interface CellMap {
  readonly columns: readonly string[];
  readonly rows: readonly CellMapRow[];
}

/** The fate of every cell of a case table, row by row; lines set aside are one fate across. */
export function cellMap(table: CaseTable): CellMap {
  const recoded = new Map<string, Set<number>>();
  for (const { column, rows } of table.log) {
    const known = recoded.get(column) ?? new Set<number>();
    for (const row of rows) known.add(row);
    recoded.set(column, known);
  }
  const questions = new Map<number, string[]>();
  const asked = new Map<string, Set<number>>();
  for (const { id, rows, column } of table.questions) {
    const known = asked.get(column) ?? new Set<number>();
    for (const row of rows) {
      known.add(row);
      questions.set(row, [...(questions.get(row) ?? []), id]);
    }
    asked.set(column, known);
  }
  const rows = new Map<number, CellMapRow>();
  for (const { row, values } of table.cases) {
    if (rows.has(row)) continue;
    const fates = table.columns.map(({ name, role }, k): CellFate => {
      if (role === "identifier") return "withheld";
      const value = values[k]!;
      if (value.kind === "asked" || asked.get(name)?.has(row)) return "asked";
      if (value.kind === "missing") return "missing";
      return recoded.get(name)?.has(row) ? "recoded" : "read";
    });
    rows.set(row, { row, fates, questions: questions.get(row) ?? [] });
  }
  for (const { row } of table.setAside)
    rows.set(row, { row, fates: table.columns.map(() => "setAside"), questions: questions.get(row) ?? [] });
  return { columns: table.columns.map(({ name }) => name), rows: [...rows.values()].toSorted((a, b) => a.row - b.row) };
}
