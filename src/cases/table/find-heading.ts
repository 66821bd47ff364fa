import { cellLook } from "./cell-look.js";
import { headingRole } from "./heading-words.js";

/** Rows of a heading as indices into the grid, top first; empty when the table has none. */
export interface Heading {
  readonly rows: readonly number[];
}

const searched = 60;

/**
 * Finds the heading: the row whose cells read most like names of columns, with the row of groups above it, or the
 * row of second names or units below it.
 */
export function findHeading(grid: readonly (readonly string[])[]): Heading {
  const filled = grid.map((row) => row.filter((text) => text !== "").length);
  const usual = usualWidth(filled);
  let best = -1;
  let bestScore = 0;
  for (let r = 0, seen = 0; r < grid.length && seen < searched; r++) {
    if (filled[r] === 0) continue;
    seen++;
    const score = headingScore(grid[r]!, usual);
    if (score > bestScore) [best, bestScore] = [r, score];
  }
  if (best < 0) return { rows: [] };
  const rows = [best];
  if (best > 0 && groups(grid[best - 1]!, grid[best]!)) rows.unshift(best - 1);
  while (
    rows.length < 4 &&
    secondNames(
      grid[rows.at(-1)! + 1],
      rows.map((r) => grid[r]!),
    )
  )
    rows.push(rows.at(-1)! + 1);
  return { rows };
}

/** Known words of the trade count most; numbers, dates and codes count against a heading. */
function headingScore(row: readonly string[], usual: number): number {
  const cells = row.filter((text) => text !== "");
  if (cells.length < Math.min(2, usual) || cells.length < usual * 0.4) return 0;
  let known = 0;
  let words = 0;
  let against = 0;
  for (const text of cells) {
    const look = cellLook(text);
    const role = headingRole(text);
    if (look === "number" || look === "date") against++;
    else if (look === "sentence") against += role ? 0 : 0.5;
    else if (look === "word" && role) known++;
    else if (look === "word") words++;
    else against += role ? 0 : 0.3;
  }
  if (known === 0 && words < cells.length) return 0;
  return (
    (3 * known + words - 3 * against) / Math.sqrt(cells.length) - (known === 0 ? 0.9 * Math.sqrt(cells.length) : 0)
  );
}

/** A row of groups stands right above the names: few short words, none over the first name, more names than groups. */
function groups(above: readonly string[], names: readonly string[]): boolean {
  const at = above.flatMap((text, c) => (text === "" ? [] : [c]));
  if (at.length === 0 || at.length >= names.filter((text) => text !== "").length) return false;
  if (!at.every((c) => above[c]!.length <= 40 && ["word", "code"].includes(cellLook(above[c]!)))) return false;
  const first = names.findIndex((text) => text !== "");
  if (at[0]! > first) return true;
  return at.length > 1 && at.every((c) => !/\d/.test(above[c]!) && above[c]!.split(" ").length <= 3);
}

const unit =
  /^[([]?\s*(mm|cm|m|kg|g|deg(rees)?|°|%|years?|yrs?|y|months?|mths?|weeks?|days?|hours?|h|min|l ?\/ ?r|y ?\/ ?n|m ?\/ ?f|dd.?mm.?yy(yy)?|yes ?\/ ?no|i ?- ?iv|1 ?- ?4|thirds?)\s*[)\]]?$/i;

/** A row below that only fills gaps of the heading, or only names units. */
function secondNames(below: readonly string[] | undefined, heading: readonly (readonly string[])[]): boolean {
  if (!below) return false;
  const at = below.flatMap((text, c) => (text === "" ? [] : [c]));
  if (at.length === 0) return false;
  if (at.every((c) => unit.test(below[c]!))) return at.length > 1 || /[([]|°|mm|deg/.test(below[at[0]!]!);
  const last = heading.at(-1)!;
  const gaps = at.filter((c) => (last[c] ?? "") === "");
  const first = last.findIndex((text) => text !== "");
  const words = at.every((c) => cellLook(below[c]!) === "word" || headingRole(below[c]!) !== undefined);
  return (
    gaps.length > 0 &&
    (below[first] ?? "") === "" &&
    words &&
    at.filter((c) => headingRole(below[c]!)).length * 2 >= at.length
  );
}

/** The number of filled cells that a row of the table usually has: the upper quartile of all rows. */
function usualWidth(filled: readonly number[]): number {
  const sorted = filled.filter((count) => count > 0).toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length * 0.75)] ?? 0;
}
