import type { CaseTable, Value } from "./types.js";
import { findVisits } from "./visits.js";

/** One measure of one case at one visit. */
export interface Visit {
  readonly id: string;
  readonly measure: string;
  readonly months: number | "last";
  readonly value: Value;
}

/** Repeated visits of a wide table as one row each, in the order of cases, measures and times. */
export function longForm(table: CaseTable): Visit[] {
  const index = new Map(table.columns.map(({ name }, k) => [name, k]));
  const groups = findVisits(table.columns.filter(({ role }) => role !== "identifier").map(({ name }) => name));
  return table.cases.flatMap(({ id, values }) =>
    groups.flatMap(({ measure, visits }) =>
      visits.map(({ column, months }) => ({ id, measure, months, value: values[index.get(column)!]! })),
    ),
  );
}
