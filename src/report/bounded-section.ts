import type { Paragraph, Section, Span, TextTable } from "./text.js";

/** Most rows of a table, and most cases listed under a number. */
export interface Bounds {
  readonly rows: number;
  readonly cases: number;
}

/** A section as a page can draw it however many cases it counts; what is left out of lists and tables is counted in `more`. */
export function boundedSection(section: Section, bounds: Bounds): Section {
  const paragraph = (spans: Paragraph): Paragraph => spans.map((span) => boundedSpan(span, bounds));
  return {
    ...section,
    answer: section.answer.map(paragraph),
    cautions: section.cautions.map(paragraph),
    tables: section.tables.map((table) => boundedTable(table, bounds)),
  };
}

function boundedTable(table: TextTable, bounds: Bounds): TextTable {
  const rows = table.rows.slice(0, bounds.rows).map((row) => row.map((span) => boundedSpan(span, bounds)));
  const more = table.rows.length - rows.length;
  return { ...table, rows, ...(more > 0 ? { more } : {}) };
}

function boundedSpan(span: Span, { cases: most }: Bounds): Span {
  if (typeof span === "string" || span.cases.length <= most) return span;
  return { ...span, cases: span.cases.slice(0, most), more: span.cases.length - most };
}
