import Papa from "papaparse";
import { SheetError } from "../sheet-error.js";
import type { RawCell, RawSheet } from "../types.js";
import { decodeText } from "./decode-text.js";
import { findSeparator, type Separator } from "./find-separator.js";

const blank: RawCell = { text: "" };

/** A text file as records and fields. Blank records count; a quoted line break starts none. */
export function readText(bytes: Uint8Array, file: string): RawSheet {
  const { text: decoded, encoding } = decodeText(bytes);
  if (decoded.includes("\u0000"))
    throw new SheetError(file, [{ rule: "is not text and not a workbook; expected .csv, .tsv, .xlsx or .ods" }]);
  const text = decoded.replace(/\r\n?/g, "\n");
  const separator = findSeparator(text);
  const { records, remarks } = parse(text, separator);
  if (records.every((record) => record.every((field) => field.trim() === "")))
    throw new SheetError(file, [{ rule: "holds no text; expected a heading row and cases" }]);
  const known: Map<string, RawCell>[] = [];
  const rows = records.map((record, i) => ({
    number: i + 1,
    cells: record.map((field, c) => cellOf(field, (known[c] ??= new Map([["", blank]])))),
  }));
  return { file, kind: "text", separator, encoding, rows, remarks };
}

const shared = 1000;

/** Like texts of a column share one cell, as long as it has few different ones. */
function cellOf(field: string, known: Map<string, RawCell>): RawCell {
  if (known.size > shared) return { text: field };
  const found = known.get(field);
  if (found) return found;
  const cell = { text: field };
  known.set(field, cell);
  return cell;
}

function parse(text: string, separator: Separator): { records: string[][]; remarks: string[] } {
  const options = { delimiter: separator, newline: "\n" as const, header: false as const };
  const parsed = Papa.parse<string[]>(text, options);
  const open = parsed.errors.find((error) => error.code === "MissingQuotes");
  const remarks: string[] = [];
  let records = parsed.data;
  if (open) {
    // An unclosed quote would swallow the rest of the file: then quotes are read as plain signs.
    records = Papa.parse<string[]>(text, { ...options, quoteChar: "\u0000" }).data;
    remarks.push(
      `a quotation mark opened in row ${(open.row ?? 0) + 1} is never closed; quotation marks were read as text`,
    );
  }
  if (text.endsWith("\n")) records.pop();
  return { records, remarks };
}
