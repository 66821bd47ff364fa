import { tagAt } from "../text/blocks.js";
import type { Span } from "../text/token.js";

/** The rows of one pasted table, all of one width; `text` is without tags and outer space. */
export type Grid = readonly (readonly Span[])[];

/** More cells than a printed table holds; the rest is left to the sentence reader. */
const mostCells = 20_000;

/** Pasted tables: neighbouring lines with equally many tabs, and HTML without merged cells. In one pass. */
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

/** Null ends a table; a table with merged cells gives none, for its columns cannot be told apart. */
function htmlRows(text: string): (Span[] | null)[] {
  const rows: (Span[] | null)[] = [];
  let row: Span[] = [];
  let open = -1;
  let merged = false;
  let tableFrom = 0;
  let cells = 0;
  const close = (end: number): void => {
    if (open >= 0) row.push(cellOf(text, open, end));
    open = -1;
  };
  for (let i = text.indexOf("<"); i >= 0 && cells < mostCells; i = text.indexOf("<", i + 1)) {
    const tag = tagAt(text, i);
    if (!tag) continue;
    const cell = tag.name === "td" || tag.name === "th";
    if (!cell && tag.name !== "tr" && tag.name !== "table") continue;
    close(i);
    if (cell && text[i + 1] !== "/") {
      open = tag.end;
      cells++;
      merged ||= /(col|row)span\s*=\s*["']?(?!1\b)\d/i.test(text.slice(i, Math.min(tag.end, i + 400)));
    } else if (!cell) {
      if (row.length > 0) rows.push(row);
      row = [];
      if (tag.name === "table") {
        if (merged) rows.length = tableFrom;
        rows.push(null);
        [tableFrom, merged] = [rows.length, false];
      }
    }
  }
  if (row.length > 0) rows.push(row);
  return merged ? rows.slice(0, tableFrom) : rows;
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
