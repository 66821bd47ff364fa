import { showValue } from "./show-value.js";
import type { CaseRow, CaseTable, Column, Value } from "./types.js";

/** A table that can be shared: new case and child numbers, whole years, days in place of dates, no notes. */
export interface SharedTable {
  readonly columns: readonly { readonly name: string; readonly role: Column["role"] }[];
  readonly rows: readonly (readonly string[])[];
  /** What was taken out or changed, one sentence each. */
  readonly changes: readonly string[];
}

/**
 * The table without what tells who somebody is. Identifiers, notes and other free text leave; dates become days since the
 * first date of the same case; ages become whole years; cases and children get new numbers in the order of the rows.
 */
export function shareSafe(table: CaseTable): SharedTable {
  const dates = at(table, (column) => column.role === "date");
  const kept = at(
    table,
    (column, k) => !["identifier", "note", "id", "child"].includes(column.role) && !freeText(table, k),
  );
  const first = dates[0];
  const children = new Map<string, number>();
  for (const { child } of table.cases) if (!children.has(child)) children.set(child, children.size + 1);
  const rows = table.cases.map((one, i) => [
    String(i + 1),
    String(children.get(one.child)),
    ...kept.map((k) => shared(one, k, table.columns[k]!, first)),
  ]);
  const left = table.columns.filter((_, k) => !kept.includes(k)).map(({ name }) => name);
  return {
    columns: [
      { name: "case", role: "id" },
      { name: "child", role: "child" },
      ...kept.map((k) => ({ name: heading(table.columns[k]!, k === first), role: table.columns[k]!.role })),
    ],
    rows,
    changes: [
      `left out: ${left.length > 0 ? left.join(", ") : "no column"}`,
      ...(dates.length > 0 ? ["dates are days since the first date of the same case"] : []),
      ...(table.columns.some(({ role }) => role === "age") ? ["ages are whole years"] : []),
      "cases and children have new numbers",
    ],
  };
}

function at(table: CaseTable, test: (column: Column, k: number) => boolean): number[] {
  return table.columns.flatMap((column, k) => (test(column, k) ? [k] : []));
}

/** Texts that are nearly all different say something about a person. */
function freeText(table: CaseTable, k: number): boolean {
  if (table.columns[k]!.role !== "other") return false;
  const texts = table.cases.flatMap(({ values }) => {
    const value = values[k]!;
    return value.kind === "text" ? [value.text] : [];
  });
  return texts.length > 4 && (new Set(texts).size > texts.length * 0.5 || texts.some((text) => text.length > 60));
}

function heading({ name, role }: Column, first: boolean): string {
  if (role === "date") return first ? `${name} (day 0)` : `${name} (days)`;
  return role === "age" ? `${name} (whole years)` : name;
}

function shared(one: CaseRow, k: number, { role }: Column, first: number | undefined): string {
  const value: Value = one.values[k]!;
  if (value.kind === "date") {
    const start = first === undefined ? undefined : one.values[first];
    return start?.kind === "date"
      ? String(Math.round((Date.parse(value.iso) - Date.parse(start.iso)) / 86_400_000))
      : "";
  }
  if (role === "age" && value.kind === "number") return String(Math.floor(value.number));
  return showValue(value);
}
