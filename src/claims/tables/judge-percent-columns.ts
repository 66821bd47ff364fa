import type { Claim } from "../claim.js";
import { asPrinted, fixed } from "../judging/number-text.js";
import { roundingOf } from "../judging/rounding.js";
import type { PrintedNumber } from "../text/token.js";
import { isTotal } from "./cell-values.js";
import type { CountTable } from "./table-counts.js";

const percentHead = /^%|\s%$|^per ?cent|\bpercent(age)?\b|\(%\)$/i;

/** A column of percentages with the counts at its left, row by row, and what they are of. */
interface Column {
  readonly at: number;
  readonly percents: readonly PrintedNumber[];
  readonly counts: readonly number[];
  readonly wholes: readonly number[];
}

/**
 * Sets a column headed "%" against the counts at its left, as shares of another column or of the counts' own sum:
 * whichever most rows go by. Where no whole explains most of the rows, nothing is said.
 */
export function judgePercentColumns(table: CountTable): Claim[] {
  return table.heads.flatMap((head, at) => {
    if (at === 0 || !percentHead.test(head.text)) return [];
    const percents = table.cells.map((row) => percentOf(row[at]!.text));
    const counts = plainColumn(table, at - 1);
    if (!counts || !percents.every((percent) => percent !== null)) return [];
    const columns = wholesFor(table, at, counts).map((wholes): Column => ({ at, percents, counts, wholes }));
    const best = columns.toSorted((a, b) => fitting(b) - fitting(a))[0];
    return best && fitting(best) >= 2 && 2 * fitting(best) > counts.length ? judged(table, best) : [];
  });
}

function percentOf(text: string): PrintedNumber | null {
  const found = /^(\d{1,3})(?:[.·](\d{1,3}))? ?%?$/.exec(text.trim());
  return found ? { value: Number(`${found[1]}.${found[2] ?? "0"}`), decimals: found[2]?.length ?? 0 } : null;
}

/** A column of whole numbers, or null. */
function plainColumn({ counts }: CountTable, j: number): number[] | null {
  const column = counts.map((row) => row[j]);
  return column.every((cell) => cell && cell.trials === null && cell.bracket === null)
    ? column.map((cell) => cell!.count)
    : null;
}

function wholesFor(table: CountTable, at: number, counts: readonly number[]): number[][] {
  const columns = table.heads.flatMap((_, j) => (j >= at - 1 ? [] : [plainColumn(table, j)]));
  const sum = table.labels.reduce((all, { text }, i) => (isTotal(text) ? all : all + counts[i]!), 0);
  return [...columns.filter((column) => column !== null), counts.map(() => sum)].filter((wholes) =>
    wholes.every((whole, i) => whole > 0 && whole >= counts[i]!),
  );
}

const fits = ({ percents, counts, wholes }: Column, i: number): boolean =>
  roundingOf([[(100 * counts[i]!) / wholes[i]!, percents[i]!]]) !== null;
const fitting = (column: Column): number => column.counts.filter((_, i) => fits(column, i)).length;

function judged(table: CountTable, column: Column): Claim[] {
  return column.counts.map((successes, i): Claim => {
    const [percent, trials] = [column.percents[i]!, column.wholes[i]!];
    const value = (100 * successes) / trials;
    const base = {
      ...table.cells[i]![column.at]!,
      kind: "percentage",
      printed: { successes: { value: successes, decimals: 0 }, trials: { value: trials, decimals: 0 }, percent },
      recomputed: { percent: value },
      unit: "cannot be checked",
      conclusion: "cannot be checked",
      wouldChange: [],
    } as const;
    const right = `${successes} of ${trials} is ${fixed(value, percent.decimals)}%`;
    return fits(column, i)
      ? { ...base, arithmetic: "holds", because: `${right}.`, reproducedBy: ["count over total"] }
      : {
          ...base,
          arithmetic: "fails",
          because: `${right}, not ${asPrinted(percent)}%. Which number is right?`,
          reproducedBy: [],
        };
  });
}
