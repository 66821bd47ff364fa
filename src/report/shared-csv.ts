import Papa from "papaparse";
import type { SharedTable } from "../cases/share-safe.js";
import { harmless } from "./csv-table.js";

/** A table to share as CSV (RFC 4180, CRLF): one heading row, one row a case. No cell starts a formula. */
export function sharedCsv({ columns, rows }: SharedTable): string {
  const lines = [columns.map(({ name }) => name), ...rows].map((line) => line.map(harmless));
  return `${Papa.unparse(lines, { newline: "\r\n" })}\r\n`;
}
