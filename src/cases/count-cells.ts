import type { Draft, Place } from "./doubts.js";
import type { CaseTable } from "./types.js";
import type { ReadColumn } from "./values/read-column.js";

export interface Fates {
  readonly columns: readonly ReadColumn[];
  /** Places blocked by an open question about several cells. */
  readonly open: readonly Place[];
  readonly dropped: ReadonlySet<number>;
}

/** Every cell of the file has one fate; identifiers, headings and lines that are no cases are set aside. */
export function countCells(
  { sheet, lines, positions, roles }: Draft,
  { columns, open, dropped }: Fates,
): CaseTable["cells"] {
  const blocked = new Set(open.map(({ line, column }) => `${line} ${column}`));
  const all = sheet.rows.reduce((sum, row) => sum + row.cells.length, 0);
  let understood = 0;
  let asked = 0;
  lines.forEach(({ row }, i) => {
    if (dropped.has(i)) return;
    positions.forEach((c, k) => {
      if (row.cells[c] === undefined || roles[k] === "identifier") return;
      if (columns[k]!.openLines.has(i) || (blocked.size > 0 && blocked.has(`${i} ${k}`))) asked++;
      else understood++;
    });
  });
  return { understood, asked, setAside: all - understood - asked };
}
