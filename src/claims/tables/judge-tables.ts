import type { Claim } from "../claim.js";
import { judgePercentCells } from "./judge-percent-cells.js";
import { judgePercentColumns } from "./judge-percent-columns.js";
import { judgePercentTotals } from "./judge-percent-totals.js";
import { judgeTableSums } from "./judge-table-sums.js";
import { countTable } from "./table-counts.js";
import { tableGrids } from "./table-grids.js";

/** Judges the pasted tables of a text as tables: shares against the column's whole, totals against their parts. */
export function judgeTables(text: string): Claim[] {
  return tableGrids(text).flatMap((grid) => {
    const table = countTable(grid);
    if (!table) return [];
    // A span of the text, tags included, so that marking it shows what was pasted.
    const place = (claim: Claim): Claim => ({ ...claim, ...printedPlace(text, claim) });
    return [
      ...judgePercentCells(table),
      ...judgePercentColumns(table),
      ...judgePercentTotals(table),
      ...judgeTableSums(table),
    ].map(place);
  });
}

/** The cell without its outer white space, at its place in the text. */
function printedPlace(text: string, { start, end }: Claim): { text: string; start: number; end: number } {
  const raw = text.slice(start, end);
  const from = start + raw.length - raw.trimStart().length;
  return { text: raw.trim(), start: from, end: from + raw.trim().length };
}
