import { type Cursor, countAt, take, textAt } from "./cursor.js";
import type { Place } from "./facts.js";

/** A square cross-table of two raters, rows first. */
export interface CrossTable extends Place {
  readonly rows: readonly (readonly number[])[];
}

const rowEnds = new Set(["|", ";", "/"]);

/** Cross-tables written in one line: "[10 2 0 0 | 3 14 3 0 | 0 3 13 2 | 0 0 1 9]". Takes their tokens. */
export function readCrossTables(cursor: Cursor): CrossTable[] {
  const tables: CrossTable[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const table = countAt(cursor, i) === null ? null : tableAt(cursor, i);
    if (!table) continue;
    take(cursor, table);
    tables.push(table);
    i = table.to - 1;
  }
  return tables;
}

function tableAt(cursor: Cursor, from: number): CrossTable | null {
  const rows: number[][] = [[]];
  let at = from;
  let separator = "";
  for (; at < cursor.tokens.length && rows.length <= 12; at++) {
    const value = countAt(cursor, at);
    const text = textAt(cursor, at);
    if (value !== null && !cursor.tokens[at]!.spelled) rows.at(-1)!.push(value);
    else if (rowEnds.has(text) && (separator === "" || text === separator) && rows.at(-1)!.length > 1) {
      separator = text;
      rows.push([]);
    } else if (!(["]", "["].includes(text) && nearRowEnd(cursor, at)) && !(text === "," && rows.at(-1)!.length > 0))
      break;
  }
  if (rows.at(-1)!.length === 0) rows.pop();
  const square = rows.length >= 2 && rows.every((row) => row.length === rows.length);
  return square ? { from, to: at, rows } : null;
}

/** "[10 2], [3 14]" and "10 2] | [3 14": brackets around a row. */
const nearRowEnd = (cursor: Cursor, at: number): boolean =>
  rowEnds.has(textAt(cursor, at - 1)) || rowEnds.has(textAt(cursor, at + 1));

/** A cross-table pasted as rows of its own: square blocks of whole numbers in consecutive rows, labels allowed first. */
export function crossTableOfRows(rows: readonly (readonly number[])[]): number[][] | null {
  if (rows.length < 2) return null;
  const width = rows[0]!.length;
  if (width < 2 || rows.some((row) => row.length !== width)) return null;
  if (rows.length === width) return rows.map((row) => [...row]);
  return null;
}
