import type { CaseTable } from "../../src/cases/types.js";
import type { TextTable } from "../../src/report/text.js";

/** What was read as what and why, and what was set aside, as a table to read and to save. */
export function logTable({ log, setAside }: CaseTable): TextTable {
  const read = log.map(({ rows, column, from, to, why }) => [rows.join(" "), column, from, to, why]);
  const aside = setAside.map(({ row, text, why }) => [String(row), "", text, "set aside", why]);
  return {
    caption: "What was read as what",
    head: ["Rows", "Column", "Found", "Read as", "Why"],
    rows: [...read, ...aside],
    notes: ["Cells that are not listed were read as they stand. The sheet itself is not changed."],
  };
}
