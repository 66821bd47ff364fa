// The only file that knows hucre.
import {
  EncryptedFileError,
  readOds,
  readXlsx,
  type Cell,
  type CellValue,
  type Color,
  type Sheet,
  type Workbook,
} from "hucre";
import { SheetError } from "../sheet-error.js";
import type { RawCell, RawRow, RawSheet } from "../types.js";
import { headingRole } from "../table/heading-words.js";
import { checkArchiveSize } from "./archive-size.js";

const blank: RawCell = { text: "" };

/** One sheet of an .xlsx or .ods workbook: the one named, else the fullest visible one with a heading of cases. */
export async function readWorkbook(bytes: Uint8Array, file: string, sheetName?: string): Promise<RawSheet> {
  checkArchiveSize(bytes, file);
  const workbook = await open(bytes, file);
  const sheet = choose(workbook, file, sheetName);
  const others = workbook.sheets.filter((other) => other !== sheet && filled(other) > 0);
  const read = rawSheet(sheet, file);
  if (read.rows.length === 0)
    throw new SheetError(file, [{ rule: `sheet "${sheet.name}" is empty; expected a heading row and cases` }]);
  return { ...read, otherSheets: others.map(({ name }) => name), others: others.map((other) => rawSheet(other, file)) };
}

function rawSheet(sheet: Sheet, file: string): RawSheet {
  return {
    file,
    kind: "workbook",
    sheetName: sheet.name,
    rows: rowsOf(sheet),
    merges: (sheet.merges ?? []).map((merge) => ({
      top: merge.startRow + 1,
      left: merge.startCol + 1,
      bottom: merge.endRow + 1,
      right: merge.endCol + 1,
    })),
    hiddenColumns: (sheet.columns ?? []).flatMap((column, i) => (column?.hidden ? [i + 1] : [])),
    coloured: colouredRows(sheet),
    struck: struckRows(sheet),
    remarks: [],
  };
}

async function open(bytes: Uint8Array, file: string): Promise<Workbook> {
  try {
    return isOpenDocument(bytes) ? await readOds(bytes) : await readXlsx(bytes, { readStyles: true });
  } catch (error) {
    const rule =
      error instanceof EncryptedFileError
        ? "is protected by a password; open it, remove the password and save it again"
        : "cannot be opened as a workbook: it is damaged, cut short, or another kind of file; save it as .xlsx or .csv";
    throw new SheetError(file, [{ rule }]);
  }
}

/** An OpenDocument archive begins with an uncompressed part "mimetype". */
function isOpenDocument(bytes: Uint8Array): boolean {
  return new TextDecoder("latin1").decode(bytes.subarray(30, 120)).includes("opendocument");
}

function choose(workbook: Workbook, file: string, name?: string): Sheet {
  if (name !== undefined) {
    const named = workbook.sheets.find((sheet) => sheet.name === name);
    if (named) return named;
    const names = workbook.sheets.map((sheet) => `"${sheet.name}"`).join(", ");
    throw new SheetError(file, [{ rule: `has no sheet "${name}"; its sheets are ${names}` }]);
  }
  const visible = workbook.sheets.filter((sheet) => !sheet.hidden && !sheet.veryHidden);
  const all = visible.length > 0 ? visible : workbook.sheets;
  const headed = all.filter((sheet) => namedRoles(sheet) >= 3);
  const worth = new Map(all.map((sheet) => [sheet, filled(sheet) * (repeatsNumbers(sheet) ? 0.1 : 1)]));
  const best = (headed.length > 0 ? headed : all).toSorted((a, b) => worth.get(b)! - worth.get(a)!)[0];
  if (!best) throw new SheetError(file, [{ rule: "has no sheet; expected a heading row and cases" }]);
  return best;
}

/** Most roles that one of the first rows names: a sheet of cases has a heading, one of explanations or totals has not. */
function namedRoles(sheet: Sheet): number {
  const roles = sheet.rows.slice(0, 60).map((row) => {
    const found = row.map((value) => (typeof value === "string" && value.length < 60 ? headingRole(value) : undefined));
    return new Set(found.filter((role) => role !== undefined && role !== "other")).size;
  });
  return Math.max(0, ...roles);
}

/** Whether the column of case numbers has most numbers more than once: a sheet of visits, not of cases. */
function repeatsNumbers(sheet: Sheet): boolean {
  const head = sheet.rows
    .slice(0, 60)
    .findIndex((row) => row.some((value) => value !== null && headingRole(String(value)) === "id"));
  if (head < 0) return false;
  const at = sheet.rows[head]!.findIndex((value) => value !== null && headingRole(String(value)) === "id");
  const ids = sheet.rows
    .slice(head + 1)
    .flatMap((row) => (row[at] === null || row[at] === undefined || row[at] === "" ? [] : [String(row[at])]));
  return new Set(ids).size < ids.length * 0.6;
}

function filled(sheet: Sheet): number {
  return sheet.rows.reduce((sum, row) => sum + row.filter((value) => value !== null && value !== "").length, 0);
}

function rowsOf(sheet: Sheet): RawRow[] {
  const rows = sheet.rows.map((values, r): RawRow => {
    const cells = values.map((value, c) => cellOf(value, sheet.cells?.get(`${r},${c}`)));
    return { number: r + 1, cells, ...(sheet.rowDefs?.get(r)?.hidden ? { hidden: true } : {}) };
  });
  while (rows.at(-1)?.cells.every((cell) => cell.text === "" && cell.comment === undefined)) rows.pop();
  return rows;
}

function cellOf(value: CellValue, detail: Cell | undefined): RawCell {
  const extra = {
    ...(detail?.formula === undefined ? {} : { formula: true }),
    ...(detail?.type === "error" ? { error: true } : {}),
    ...(detail?.comment ? { comment: detail.comment.text } : {}),
  };
  if (value === null || value === undefined) return Object.keys(extra).length > 0 ? { text: "", ...extra } : blank;
  if (value instanceof Date) {
    if (Number.isNaN(value.getTime())) return { text: "#VALUE!", error: true };
    const date = value.toISOString().slice(0, 10);
    return { text: date, date, ...extra };
  }
  if (typeof value === "number") return { text: shown(value, detail?.style?.numFmt), number: value, ...extra };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", boolean: value, ...extra };
  return { text: value, ...extra };
}

/** A percentage is shown as one: 0.45 formatted "0%" reads 45%. Other numbers to 15 digits, as the sheet stores them. */
function shown(value: number, format: string | undefined): string {
  if (format?.includes("%")) return `${Number((value * 100).toPrecision(12))}%`;
  const zeros = /^0{2,}$/.exec(format ?? "")?.[0].length ?? 0;
  const text = String(Number(value.toPrecision(15)));
  return zeros > 0 && /^\d+$/.test(text) ? text.padStart(zeros, "0") : text;
}

function struckRows(sheet: Sheet): number[] {
  const rows = [...(sheet.cells ?? [])].filter(([, { style }]) => style?.font?.strikethrough);
  return [...new Set(rows.map(([place]) => Number(place.split(",")[0]) + 1))].toSorted((a, b) => a - b);
}

/** Rows with cells filled or written in a colour of their own. */
function colouredRows(sheet: Sheet): number[] {
  const rows = new Set<number>();
  for (const [place, { style }] of sheet.cells ?? []) {
    const fill = style?.fill;
    const filled = fill?.type === "pattern" && fill.pattern !== "none" && isColour(fill.fgColor, /^(FF)?FFFFFF$/i);
    const written = isColour(style?.font?.color, /^(FF)?000000$/i);
    if (filled || written) rows.add(Number(place.split(",")[0]) + 1);
  }
  return [...rows].toSorted((a, b) => a - b);
}

/** A colour other than the plain one; theme colours 0 and 1 are paper and ink. */
function isColour(colour: Color | undefined, plain: RegExp): boolean {
  if (!colour) return false;
  if (colour.rgb !== undefined) return !plain.test(colour.rgb);
  return colour.theme !== undefined && colour.theme > 1;
}
