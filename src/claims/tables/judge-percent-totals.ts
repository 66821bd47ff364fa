import type { Claim } from "../claim.js";
import { asPrinted, fixed } from "../judging/number-text.js";
import { roundingOf } from "../judging/rounding.js";
import { isTotal } from "./cell-values.js";
import type { CountTable } from "./table-counts.js";

/** One "n (%)" cell with the total it may be a share of. */
interface Shared {
  readonly i: number;
  readonly j: number;
  readonly total: number;
  readonly fits: boolean;
}

/**
 * "n (%)" cells of a table without "n =" in its heads, against the Total row or the Total column, whichever nearly all
 * of them go by. One that misses it, and that no other number of its row or column explains, fails.
 */
export function judgePercentTotals(table: CountTable): Claim[] {
  if (table.wholes.some((whole) => whole !== null)) return [];
  const row = table.labels.findIndex(({ text }) => isTotal(text));
  const column = table.heads.findIndex(({ text }) => isTotal(text.replace(/ ?,? ?n ?\(%\)$/i, "")));
  const down = shares(table, (_, j) => (row < 0 ? null : (table.counts[row]![j]?.count ?? null)), row, -1);
  const along = shares(table, (i) => (column < 0 ? null : (table.counts[i]![column]?.count ?? null)), -1, column);
  const best = [down, along].toSorted((a, b) => fitting(b) - fitting(a))[0]!;
  if (fitting(best) < 4 || best.length - fitting(best) > 1) return [];
  return best.filter(({ fits }) => !fits).flatMap((cell) => (explained(table, cell) ? [] : [claimOf(table, cell)]));
}

const fitting = (cells: readonly Shared[]): number => cells.filter(({ fits }) => fits).length;

/** Bracketed cells with their total; those of the Total line itself are left out. */
function shares(
  table: CountTable, totalOf: (i: number, j: number) => number | null, row: number, column: number,
): Shared[] {
  return table.counts.flatMap((line, i) =>
    line.flatMap((cell, j): Shared[] => {
      const total = totalOf(i, j);
      if (!cell?.bracket || cell.trials !== null || total === null || total < 1 || i === row || j === column) return [];
      return [{ i, j, total, fits: cell.count <= total && roundingOf([[(100 * cell.count) / total, cell.bracket]]) !== null }];
    }),
  );
} // prettier-ignore

/** Another count of the row or column, or the row's or column's sum, gives the percentage. */
function explained({ counts }: CountTable, { i, j }: Shared): boolean {
  const cell = counts[i]![j]!;
  const row = counts[i]!.flatMap((other) => other?.count ?? []);
  const column = counts.flatMap((line) => line[j]?.count ?? []);
  const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
  return [...row, ...column, sum(row), sum(column)].some(
    (whole) => whole >= cell.count && whole > 0 && roundingOf([[(100 * cell.count) / whole, cell.bracket!]]) !== null,
  );
}

function claimOf(table: CountTable, { i, j, total }: Shared): Claim {
  const { count, bracket } = table.counts[i]![j]!;
  const value = (100 * count) / total;
  return {
    ...table.cells[i]![j]!,
    kind: "percentage",
    printed: { successes: { value: count, decimals: 0 }, trials: { value: total, decimals: 0 }, percent: bracket! },
    recomputed: { percent: value },
    arithmetic: "fails",
    unit: "cannot be checked",
    conclusion: "cannot be checked",
    because: `The other percentages of the table go by its totals: ${count} of ${total} is ${fixed(value, bracket!.decimals)}%, not ${asPrinted(bracket!)}%. Which number is right?`,
    reproducedBy: [],
    wouldChange: [],
  };
} // prettier-ignore
