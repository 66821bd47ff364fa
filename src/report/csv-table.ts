import Papa from "papaparse";
import { spanText, type TextTable } from "./text.js";

/**
 * A table as CSV (RFC 4180, CRLF, UTF-8 with a byte order mark): caption, head, rows, notes. No cell starts a formula in a
 * spreadsheet: one that would is preceded by an apostrophe; plain numbers stay numbers.
 */
export function csvTable({ caption, head, rows, notes }: TextTable): string {
  const lines = [[caption], head, ...rows.map((row) => row.map(spanText)), ...notes.map((note) => [note])];
  return `\uFEFF${Papa.unparse(
    lines.map((line) => line.map(harmless)),
    { newline: "\r\n" },
  )}\r\n`;
}

/** Text that a spreadsheet will not take for a formula. */
export function harmless(text: string): string {
  const number = /^[+-]?\d+(?:[.,]\d+)?$/;
  return /^[=+\-@\t\r]/.test(text) && !number.test(text) ? `'${text}` : text;
}
