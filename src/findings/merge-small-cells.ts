import type { CountRow } from "./count-rows.js";

/**
 * Counts without a cell of fewer than `least` cases: first the techniques of a grade are put together, then the grade with its
 * neighbour. Totals stay as they were; subtraction reveals nothing, since no cell is left out.
 * @throws RangeError when all cases together are fewer than `least`
 */
export function mergeSmallCells(rows: readonly CountRow[], least: number): CountRow[] {
  const total = rows.reduce((sum, { cases }) => sum + cases, 0);
  if (total < least) throw new RangeError(`mergeSmallCells: there must be at least ${least} cases, got ${total}`);
  const grades = [...new Set(rows.map(({ grade }) => grade))].map((grade) => {
    const cells = rows.filter((row) => row.grade === grade);
    return cells.some(({ cases }) => cases < least) ? [together(cells)] : cells;
  });
  const merged: CountRow[][] = [];
  for (const cells of grades) {
    const before = merged.at(-1);
    if (before !== undefined && isSmall(before, least)) merged[merged.length - 1] = [together([...before, ...cells])];
    else merged.push([...cells]);
  }
  const last = merged.at(-1)!;
  if (merged.length > 1 && isSmall(last, least)) merged.splice(-2, 2, [together([...merged.at(-2)!, ...last])]);
  return merged.flat();
}

function isSmall(cells: readonly CountRow[], least: number): boolean {
  return cells.some(({ cases }) => cases < least);
}

function together(cells: readonly CountRow[]): CountRow {
  const names = (of: (row: CountRow) => string | null): string =>
    [...new Set(cells.flatMap((row) => (of(row) ?? "not recorded").split(" or ")))].join(" or ");
  return {
    grade: names(({ grade }) => grade),
    technique: names(({ technique }) => technique),
    successes: cells.reduce((sum, { successes }) => sum + successes, 0),
    cases: cells.reduce((sum, { cases }) => sum + cases, 0),
  };
}
