import { tagAt } from "../text/blocks.js";
import { laidOut, type RawCell, spansOf } from "./merged-cells.js";
import type { Span } from "../text/token.js";

/** The rows of one pasted table, all of one width; `text` is without tags and outer space. */
export type Grid = readonly (readonly Span[])[];

/** More cells than a printed table holds; the rest is left to the sentence reader. */
const mostCells = 20_000;

/** Pasted tables: neighbouring lines with equally many tabs, and HTML, merged cells laid out. In one pass. */
export function tableGrids(text: string): Grid[] {
  const rows = /<t[dh]/i.test(text) ? htmlRows(text) : tabRows(text);
  const grids: Span[][][] = [];
  let last: Span[][] = [];
  for (const row of rows) {
    const fits = row !== null && last.length > 0 && last[0]!.length === row.length;
    if (fits) last.push(row);
    else {
      if (last.length > 1) grids.push(last);
      last = row !== null && row.length > 1 ? [row] : [];
    }
  }
  if (last.length > 1) grids.push(last);
  return grids;
}

/** One row a line; null for a line without a tab, which ends a table. */
function tabRows(text: string): (Span[] | null)[] {
  const rows: (Span[] | null)[] = [];
  let at = 0;
  let cells = 0;
  for (const line of text.split("\n")) {
    if (cells > mostCells) break;
    let start = at;
    const row = line.split("\t", 200).map((cell) => {
      const span = cellOf(text, start, start + cell.length);
      start += cell.length + 1;
      return span;
    });
    cells += row.length;
    rows.push(row.length > 1 ? row : null);
    at += line.length + 1;
  }
  return rows;
}

/** Null ends a table. */
function htmlRows(text: string): (Span[] | null)[] {
  const rows: (Span[] | null)[] = [];
  let table: RawCell[][] = [];
  let row: RawCell[] = [];
  let open = -1;
  let merging = { across: 1, down: 1 };
  let cells = 0;
  const close = (end: number): void => {
    if (open >= 0) row.push({ ...cellOf(text, open, end), ...merging });
    open = -1;
  };
  const finish = (): void => {
    if (row.length > 0) table.push(row);
    rows.push(...laidOut(table), null);
    [row, table] = [[], []];
  };
  for (let i = text.indexOf("<"); i >= 0 && cells < mostCells; i = text.indexOf("<", i + 1)) {
    const tag = tagAt(text, i);
    if (!tag) continue;
    const cell = tag.name === "td" || tag.name === "th";
    if (!cell && tag.name !== "tr" && tag.name !== "table") continue;
    close(i);
    if (cell && text[i + 1] !== "/") {
      open = tag.end;
      merging = spansOf(text.slice(i, Math.min(tag.end, i + 400)));
      cells += merging.across * merging.down;
    } else if (tag.name === "table") finish();
    else if (!cell) {
      if (row.length > 0) table.push(row);
      row = [];
    }
  }
  finish();
  return rows;
}

const entities: Record<string, string> = { "&nbsp;": " ", "&#160;": " ", "&amp;": "&", "&lt;": "<", "&gt;": ">" };

function cellOf(text: string, from: number, to: number): Span {
  const end = Math.min(to, from + 400);
  let shown = "";
  for (let i = from; i < end; i++) {
    const tag = text[i] === "<" ? tagAt(text, i) : null;
    if (tag) i = tag.end - 1;
    else shown += text[i]!;
  }
  const plain = shown.replaceAll(/&(nbsp|#160|amp|lt|gt);/g, (entity) => entities[entity]!).replaceAll(/\s/g, " ");
  return { text: plain.trim(), start: from, end: to };
}
