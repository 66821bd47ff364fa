import { namesInText } from "./names-in-text.js";
import { distinctCells } from "./table/distinct-cells.js";
import type { FoundTable } from "./table/find-table.js";
import { guessRoles } from "./table/guess-roles.js";
import { totalLead } from "./table/line-shapes.js";
import type { RawSheet } from "./types.js";

/** Texts that name people outside the cases: in titles, notes, comments, other tables, names of the file and its sheets. */
export function namesBeside(sheet: RawSheet, { setAside, tables, names }: FoundTable): string[] {
  const inTables = tables.flatMap(({ names: heads, lines }) => {
    const width = lines.reduce((widest, { texts }) => Math.max(widest, texts.length), 0);
    const cells = Array.from({ length: width }, (_, c) => distinctCells(lines, c));
    const roles = guessRoles(
      cells.map((_, c) => heads[c] ?? ""),
      cells,
      lines.length,
    );
    return cells.flatMap((column, c) => (roles[c] === "identifier" ? column.map(({ text }) => text) : []));
  });
  const withheld = guessRoles(
    names,
    names.map(() => []),
    0,
  ).map((role) => role === "identifier");
  // A line that is no case may still be about somebody, in the column that says who.
  const inLines = setAside.flatMap(({ line: { texts }, why }) => {
    const filled = texts.filter((text) => text !== "");
    if (filled.length < 3 || totalLead.test(filled[0]!) || why === "heading repeated" || /above/.test(why)) return [];
    return texts.filter((text, c) => withheld[c] && text !== "");
  });
  const free = [
    ...setAside.flatMap(({ line: { texts } }) => texts.filter((text) => text !== "")),
    ...commentsOf(sheet),
    ...names,
    ...[sheet, ...(sheet.others ?? [])].map(({ sheetName }) => sheetName ?? ""),
    ...(sheet.otherSheets ?? []),
    sheet.file.replace(/\.\w+$/, ""),
  ];
  return [...inTables, ...inLines, ...namesInText(free)];
}

function commentsOf({ kind, rows }: RawSheet): string[] {
  const out: string[] = [];
  if (kind === "workbook")
    for (const { cells } of rows) for (const { comment } of cells) if (comment !== undefined) out.push(comment);
  return out;
}
