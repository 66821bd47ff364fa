import type { Doubt, Draft, Place } from "../doubts.js";
import type { Value } from "../types.js";
import { columnFacts } from "../values/column-facts.js";
import { questionId } from "../values/read-column.js";
import { readDate } from "../values/read-date.js";
import { dateColumns, steps, type Step } from "./date-words.js";

const asTyped = "both are right as typed";
const unknown: Value = { kind: "missing", reason: "unknown" };

/**
 * Birth, injury, treatment and review in the wrong order: the case stays, what needs the dates waits for the answer. Dates
 * far from all others of their column are asked too. A birth date is compared but never shown.
 */
export function askDateOrder(draft: Draft): Doubt[] {
  const columns = dateColumns(draft);
  const dates = new Map(
    [...columns].map(([step, k]) => [step, step === "birth" ? birthDates(draft, k) : isoOf(draft.values[k]!)]),
  );
  const present = steps.filter((step) => columns.has(step));
  const doubts: Doubt[] = [];
  draft.lines.forEach((_, line) => {
    const known = present.filter((step) => dates.get(step)![line] !== undefined);
    known.slice(1).forEach((later, i) => {
      const earlier = known[i]!;
      if (dates.get(earlier)![line]! > dates.get(later)![line]!)
        doubts.push(wrongOrder(draft, columns, line, earlier, later));
    });
  });
  return [...doubts, ...farDates(draft)];
}

function isoOf(values: readonly Value[]): (string | undefined)[] {
  return values.map((value) => (value.kind === "date" ? value.iso : undefined));
}

/** Birth dates are read here only, from a column whose values are otherwise withheld. */
export function birthDates(draft: Draft, k: number): (string | undefined)[] {
  const column = draft.positions[k]!;
  const cells = draft.lines.map(({ row, texts }) => ({
    text: texts[column] ?? "",
    cell: row.cells[column] ?? { text: "" },
    count: 1,
  }));
  const facts = columnFacts(draft.names[k]!, "date", cells, draft.sheet, draft.facts[k]!.latestYear);
  return isoOf(cells.map(({ text, cell }) => readDate(text, facts, cell).value));
}

function wrongOrder(draft: Draft, columns: ReadonlyMap<Step, number>, line: number, earlier: Step, later: Step): Doubt {
  const [a, b] = [columns.get(earlier)!, columns.get(later)!];
  const shown = (k: number): string => {
    const value = draft.values[k]![line]!;
    return value.kind === "date" ? value.iso : "withheld";
  };
  const { row } = draft.lines[line]!;
  const text = `${shown(a)}, ${shown(b)}`;
  const blocks = [a, b].filter((k) => draft.roles[k] === "date").map((column): Place => ({ line, column }));
  return {
    id: `${questionId(draft.names[b]!, `${later} before ${earlier}`, text)} @ ${draft.cases[line]!.id}`,
    column: draft.names[b]!,
    text,
    asks: `${draft.names[b]} (${shown(b)}) lies before ${draft.names[a]} (${shown(a)}): which is wrong?`,
    rows: [row.number],
    blocks,
    choices: [
      { label: asTyped },
      ...blocks.map((place) => ({
        label: `${draft.names[place.column]} is wrong`,
        sets: [{ ...place, value: unknown }],
      })),
      ...(blocks.length > 1
        ? [{ label: "both are wrong", sets: blocks.map((place) => ({ ...place, value: unknown })) }]
        : []),
    ],
  };
}

const farYears = 15;

/** A year mistyped by decades. */
function farDates(draft: Draft): Doubt[] {
  return draft.roles.flatMap((role, column) => {
    if (role !== "date") return [];
    const isos = isoOf(draft.values[column]!);
    const years = Int32Array.from(
      isos.filter((iso) => iso !== undefined),
      (iso) => Number(iso.slice(0, 4)),
    ).toSorted();
    if (years.length < 5) return [];
    const middle = years[Math.floor(years.length / 2)]!;
    return isos.flatMap((iso, line): Doubt[] => {
      if (iso === undefined || Math.abs(Number(iso.slice(0, 4)) - middle) <= farYears) return [];
      const place = { line, column };
      return [
        {
          id: questionId(draft.names[column]!, "far date", iso),
          column: draft.names[column]!,
          text: iso,
          asks: `${iso} lies far from the other dates, which are about ${middle}: is the year right?`,
          rows: [draft.lines[line]!.row.number],
          blocks: [place],
          choices: [
            { label: "it is right", sets: [{ ...place, value: { kind: "date", iso } }] },
            { label: "not known", sets: [{ ...place, value: unknown }] },
          ],
        },
      ];
    });
  });
}
