import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";
import { isoDate, looseDate } from "../values/read-date.js";

/**
 * A workbook column with true dates up to the 12th of the month only, and later days left as text: the program took the
 * typed order for the other one, and the true dates have day and month exchanged.
 */
export function askSwappedDates(draft: Draft): Doubt[] {
  if (draft.sheet.kind !== "workbook") return [];
  return draft.roles.flatMap((role, column): Doubt[] => {
    if (role !== "date") return [];
    const cells = draft.lines.map(({ row }) => row.cells[draft.positions[column]!]);
    const texts = cells.filter(
      (cell) => cell?.date === undefined && cell?.text && isLate(cell.text, draft.facts[column]!.latestYear),
    );
    const dated = cells.flatMap((cell, line) => (cell?.date === undefined ? [] : [{ line, iso: cell.date }]));
    if (texts.length < 2 || dated.length === 0 || dated.some(({ iso }) => Number(iso.slice(8)) > 12)) return [];
    const swapped = dated.map(({ line, iso }) => ({
      line,
      column,
      value: {
        kind: "date" as const,
        iso: isoDate(Number(iso.slice(0, 4)), Number(iso.slice(8)), Number(iso.slice(5, 7)))!,
      },
    }));
    return [
      {
        id: questionId(draft.names[column]!, "exchanged", ""),
        column: draft.names[column]!,
        text: "",
        asks: `${texts.length} dates stand as text with days after the 12th, all ${dated.length} true dates fall on the 1st to 12th: the sheet program has probably exchanged day and month; put them back?`,
        rows: dated.map(({ line }) => draft.lines[line]!.row.number),
        blocks: dated.filter(({ iso }) => iso.slice(5, 7) !== iso.slice(8)).map(({ line }) => ({ line, column })),
        choices: [
          { label: "exchange day and month", sets: swapped },
          {
            label: "they are right",
            sets: dated.map(({ line, iso }) => ({ line, column, value: { kind: "date", iso } })),
          },
        ],
      },
    ];
  });
}

/** A text date whose first or second number can only be a day. */
function isLate(text: string, latestYear: number): boolean {
  const loose = looseDate(text.trim(), latestYear);
  return loose !== undefined && loose.first > 12 !== loose.second > 12;
}
