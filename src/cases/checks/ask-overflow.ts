import type { Doubt, Place } from "../doubts.js";
import type { Value } from "../types.js";
import { questionId } from "../values/read-column.js";
import type { Unread } from "../values/read-columns.js";
import { readers } from "../values/readers.js";

/**
 * Rows with a field more than the heading: a cell holds the separator. Nothing is shifted; the places where joining two
 * fields makes the row fit are offered, the one that reads best first.
 */
export function askOverflow(draft: Unread): Doubt[] {
  const width = draft.positions.length === 0 ? 0 : draft.positions.at(-1)! + 1;
  const separator = draft.sheet.separator ?? ";";
  return draft.lines.flatMap(({ row, texts }, line): Doubt[] => {
    const fields = texts.slice(0, texts.findLastIndex((text) => text !== "") + 1);
    const extra = fields.length - width;
    if (extra <= 0) return [];
    const fits = joins(draft, fields, extra, separator).toSorted((a, b) => a.doubts - b.doubts || b.at - a.at);
    const kept = fits.filter(({ doubts }) => doubts <= fits[0]!.doubts + 0.5).slice(0, 3);
    const from = Math.min(...kept.map(({ at }) => at));
    const blocks = draft.positions.flatMap((position, column): Place[] =>
      position >= from && draft.roles[column] !== "identifier" ? [{ line, column }] : [],
    );
    const best = kept[0]!;
    const text = best.shown;
    const column = draft.names[Math.max(0, draft.positions.indexOf(best.at))]!;
    return [
      {
        id: `${questionId(column, "field too many", text)} @ ${draft.cases[line]!.id}`,
        column,
        text,
        asks: `row ${row.number} has ${fields.length} fields for ${width} columns: ${reason(draft.sheet.separator)}; which fields are one cell?`,
        rows: [row.number],
        blocks,
        choices: [
          ...kept.map(({ shown, values }) => ({
            label: `one cell: ${shown}`,
            sets: blocks.map((place) => ({ ...place, value: values[place.column]! })),
          })),
          { label: "leave these cells out", sets: blocks.map((place) => ({ ...place, value: unknown })) },
        ],
      },
    ];
  });
}

const unknown: Value = { kind: "missing", reason: "unknown" };

function reason(separator: string | undefined): string {
  if (separator === undefined) return "a cell stands to the right of the last heading";
  return `a cell holds the separator "${separator === "\t" ? "tab" : separator}"`;
}

interface Join {
  readonly at: number;
  readonly shown: string;
  readonly values: readonly Value[];
  readonly doubts: number;
}

/** Every way to join neighbouring fields so that the row has the heading's width, with the number of cells left in doubt. */
function joins(draft: Unread, fields: readonly string[], extra: number, separator: string): Join[] {
  return draft.positions.map((at): Join => {
    const shown = fields.slice(at, at + extra + 1).join(separator === "\t" ? " " : `${separator} `);
    const row = [...fields.slice(0, at), shown, ...fields.slice(at + extra + 1)];
    let doubts = 0;
    const values = draft.positions.map((position, k) => {
      const text = row[position] ?? "";
      const { value, asks } = readers[draft.roles[k]!](text, draft.facts[k]!, { text });
      // A joined cell that cannot be read speaks against the joint more than a doubt elsewhere in the row.
      if (asks || (value.kind === "missing" && position >= at)) doubts += position === at ? 2 : 1;
      return value.kind === "asked" ? unknown : value;
    });
    return { at, shown, values, doubts };
  });
}
