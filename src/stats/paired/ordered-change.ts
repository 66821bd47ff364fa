import { normalUpper } from "../../numeric/normal.js";
import type { NotEstimable } from "../types.js";
import { noChange, requireSquareTable } from "./square-table.js";

/** Steps of all changes together up to which the exact test answers within a second. */
const mostSteps = 20_000;

/** Test of equal margins for ordered categories: whether changes go up as far as they go down. */
export type OrderedChangeResult = {
  readonly method: "orderedChange";
  readonly table: readonly (readonly number[])[];
} & (
  | {
      /** Mean change in steps, second less first, over all pairs. */
      readonly meanChange: number;
      readonly asymptotic: { readonly z: number; readonly p: number };
      /** Twice the smaller tail when the direction of every change is a toss of a coin, at most 1; not for vast tables. */
      readonly exact: number | NotEstimable;
    }
  | NotEstimable
);

/**
 * Marginal homogeneity of ordered grades: the sum of the steps from the first to the second grade, given the size of each
 * change. With two categories it is McNemar's test.
 * @param table counts of pairs: row the first grade, column the second, in order
 * @throws RangeError when the table is not square, holds no counts or no pair
 * @see Agresti 2002, Categorical Data Analysis, section 10.3 (ordered scores); exact: permutation of the signs, Fisher 1935, The
 *   Design of Experiments, section 21
 * @example orderedChange([[10, 4, 1], [1, 12, 5], [0, 2, 9]]).asymptotic.z // => 2
 */
export function orderedChange(table: readonly (readonly number[])[]): OrderedChangeResult {
  requireSquareTable("orderedChange", table);
  const bySize = new Array<number>(table.length).fill(0);
  let sum = 0;
  let pairs = 0;
  table.forEach((row, i) =>
    row.forEach((count, j) => {
      pairs += count;
      sum += count * (j - i);
      bySize[Math.abs(j - i)]! += count;
    }),
  );
  const variance = bySize.reduce((total, count, size) => total + count * size ** 2, 0);
  if (variance === 0) return { method: "orderedChange", table, estimate: null, because: noChange };
  const z = sum / Math.sqrt(variance);
  return {
    method: "orderedChange",
    table,
    meanChange: sum / pairs,
    asymptotic: { z, p: Math.min(1, 2 * normalUpper(Math.abs(z))) },
    exact: exactP(bySize, Math.abs(sum)),
  };
}

function exactP(bySize: readonly number[], observed: number): number | NotEstimable {
  const steps = bySize.reduce((total, count, size) => total + count * size, 0);
  if (steps > mostSteps) return { estimate: null, because: `the changes add up to more than ${mostSteps} steps` };
  return Math.min(1, 2 * upperTail(bySize, observed));
}

/** P(sum of changes with tossed signs >= observed): each change adds its size or nothing to a sum that starts at its lowest. */
function upperTail(bySize: readonly number[], observed: number): number {
  const most = bySize.reduce((total, count, size) => total + count * size, 0);
  const masses = new Float64Array(most + 1);
  masses[0] = 1;
  let reach = 0;
  bySize.forEach((count, size) => {
    if (size === 0) return;
    for (let change = 0; change < count; change++) {
      reach += size;
      for (let up = reach; up >= 0; up--) masses[up] = 0.5 * (masses[up]! + (up >= size ? masses[up - size]! : 0));
    }
  });
  let tail = 0;
  for (let up = most; 2 * up - most >= observed; up--) tail += masses[up]!;
  return tail;
}
