import type { CaseTable } from "../../src/cases/types.js";
import type { TextTable } from "../../src/report/text.js";

/**
 * What was read as what and why, and what was set aside, as a table to read and to save.
 * @param rowsText writes the rows of one entry; by default all of them
 */
export function logTable(
  { log, setAside }: Pick<CaseTable, "log" | "setAside">,
  rowsText: (rows: readonly number[]) => string = (rows) => rows.join(" "),
): TextTable {
  const read = log.map(({ rows, column, from, to, why }) => [rowsText(rows), column, from, to, why]);
  const aside = setAside.map(({ row, text, why }) => [String(row), "", text, "set aside", why]);
  return {
    caption: "What was read as what",
    head: ["Rows", "Column", "Found", "Read as", "Why"],
    rows: [...read, ...aside],
    notes: ["Cells that are not listed were read as they stand. The sheet itself is not changed."],
  };
}
