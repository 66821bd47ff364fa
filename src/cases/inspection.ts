import { lastDigits } from "./last-digits.js";
import { rowWords } from "./row-words.js";
import type { CaseTable } from "./types.js";

/** What `inspect` prints as JSON: the lasting fields of the command line's contract. */
export function inspection(table: CaseTable): object {
  return {
    file: table.file,
    header: table.header,
    ...(table.sheets ? { sheets: table.sheets } : {}),
    cases: table.cases.length,
    setAside: table.setAside,
    columns: table.columns.map(({ name, role, examples, unit, limb, coded }) => ({
      name,
      // The contract's words know no operator: a column of names is an identifier, one of codes is nothing more.
      role: role === "operator" ? (coded ? "identifier" : "other") : role,
      examples,
      ...(unit ? { unit } : {}),
      ...(limb ? { limb } : {}),
    })),
    identifiers: [...table.identifiers, ...table.columns.flatMap(({ name, coded }) => (coded ? [name] : []))],
    questions: table.questions.map(({ id, rows, column, text, asks, choices, cases }) => ({
      id,
      rows,
      column,
      text,
      asks,
      choices,
      ...(cases ? { cases } : {}),
    })),
    lastDigits: lastDigits(table),
    cells: table.cells,
  };
}

/** The same as a page to read. */
export function inspectionText(table: CaseTable): string {
  const { cells } = table;
  const lines = [
    `${table.file}: ${count(table.cases.length, "case")}, ${count(table.questions.length, "question")}, ${count(table.setAside.length, "line")} set aside`,
    table.header.rows.length === 0
      ? "No heading found."
      : `Heading in ${table.header.rows.length === 1 ? "row" : "rows"} ${table.header.rows.join(" and ")}.`,
    `Cells: ${cells.understood} understood, ${cells.asked} asked about, ${cells.setAside} set aside.`,
    "",
    "Columns",
    ...table.columns.map(
      ({ name, role, examples }) =>
        `  ${cut(name, 32).padEnd(33)}${role.padEnd(16)}${role === "identifier" ? "withheld" : cut(examples.join(", "), 50)}`,
    ),
  ];
  if (table.setAside.length > 0) {
    lines.push("", "Set aside, not cases");
    for (const { row, text, why } of table.setAside)
      lines.push(`  row ${rowWords(row, table.sheets).padEnd(6)}${why}${text ? `: ${cut(text, 60)}` : ""}`);
  }
  if (table.questions.length > 0) {
    lines.push("", "Questions");
    table.questions.forEach(({ rows, column, asks, choices }, i) => {
      lines.push(`  ${i + 1}. ${column ? `${cut(column, 32)}: ` : ""}${cut(asks, 160)}`);
      lines.push(
        `     ${rows.length > 0 ? `${rowList(rows, table.sheets)}; ` : ""}choices: ${choices.map((choice) => cut(choice, 40)).join(" / ")}`,
      );
    });
  }
  const digits = lastDigits(table);
  if (digits.length > 0) {
    lines.push("", "Last digits (two in ten end in 0 or 5 when nobody rounds)");
    for (const { column, n, counts } of digits)
      lines.push(`  ${cut(column, 32).padEnd(33)}${counts[0]! + counts[5]!} of ${n} end in 0 or 5`);
  }
  return lines.join("\n");
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? "" : "s"}`;
}

function cut(text: string, length: number): string {
  return text.length <= length ? text : `${text.slice(0, length - 1)}…`;
}

function rowList(rows: readonly number[], sheets: CaseTable["sheets"]): string {
  const shown = rows
    .slice(0, 12)
    .map((row) => rowWords(row, sheets))
    .join(", ");
  return `${rows.length === 1 ? "row" : "rows"} ${shown}${rows.length > 12 ? ` and ${rows.length - 12} more` : ""}`;
}
