import { logChoose } from "../../numeric/log-choose.js";
import type { TableMargins } from "./square-table.js";

const MOST_WORK = 5e9;

/**
 * Exact distribution of the summed (whole) disagreement over all pairings with these margins; null when too long.
 *
 * Rows are placed one after the other; what matters of the past is only what each column has left and the sum so far.
 *
 * @returns at place s, the probability that the disagreements sum to s
 */
export function permutationDistribution(
  { n, rows, columns }: TableMargins,
  disagreement: readonly (readonly number[])[],
): Float64Array | null {
  const top = disagreement.reduce((sum, row, i) => sum + Math.max(...row) * rows[i]!, 0);
  if (work(rows, columns, top) > MOST_WORK) return null;
  let states = new Map<string, { left: readonly number[]; mass: Float64Array }>();
  states.set(columns.join(), { left: columns, mass: Float64Array.of(1, ...new Array<number>(top).fill(0)) });
  let left = n;
  rows.forEach((row, i) => {
    const next: typeof states = new Map();
    for (const state of states.values())
      placements(row, state.left, (placed) => {
        const after = state.left.map((count, j) => count - placed[j]!);
        const key = after.join();
        let target = next.get(key);
        if (!target) next.set(key, (target = { left: after, mass: new Float64Array(top + 1) }));
        const shift = placed.reduce((sum, count, j) => sum + count * disagreement[i]![j]!, 0);
        const log = placed.reduce((sum, count, j) => sum + logChoose(state.left[j]!, count), -logChoose(left, row));
        addShifted(target.mass, state.mass, shift, Math.exp(log));
      });
    states = next;
    left -= row;
  });
  return [...states.values()][0]!.mass;
}

function addShifted(target: Float64Array, source: Float64Array, shift: number, factor: number): void {
  for (let s = 0; s + shift < target.length; s++) target[s + shift]! += source[s]! * factor;
}

/** Every way to spread a row over what the columns have left. */
function placements(row: number, left: readonly number[], visit: (placed: readonly number[]) => void): void {
  const placed = new Array<number>(left.length).fill(0);
  const after = left.map((_, j) => left.slice(j + 1).reduce((sum, count) => sum + count, 0));
  const place = (j: number, rest: number): void => {
    if (j === left.length - 1) {
      placed[j] = rest;
      visit(placed);
      return;
    }
    for (let count = Math.max(0, rest - after[j]!); count <= Math.min(rest, left[j]!); count++) {
      placed[j] = count;
      place(j + 1, rest - count);
    }
  };
  place(0, row);
}

/** Upper bound of additions, some ten times too high: states x ways to place a row x sums. */
function work(rows: readonly number[], columns: readonly number[], top: number): number {
  const free = columns.toSorted((a, b) => a - b).slice(0, -1);
  const states = free.reduce((product, count) => product * (count + 1), 1);
  const ways = (row: number): number =>
    Math.min(
      free.reduce((product, count) => product * (Math.min(row, count) + 1), 1),
      Math.exp(logChoose(row + free.length, free.length)),
    );
  return rows.reduce((sum, row, i) => sum + (i === 0 || i === rows.length - 1 ? 1 : states) * ways(row) * (top + 1), 0);
}
