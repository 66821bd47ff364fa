import { requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { disagreementWeights, type NamedWeights } from "./disagreement-weights.js";
import { tableMargins, type SquareTable } from "./square-table.js";

export interface KappaMaximum {
  readonly method: "kappa-maximum";
  readonly weights: NamedWeights;
  readonly estimate: number;
  /** The table that reaches it, with the same margins. */
  readonly table: readonly (readonly number[])[];
}

/**
 * Largest kappa that these two raters could have reached with the numbers of each grade that they gave.
 *
 * For unweighted kappa as many as possible are placed on the diagonal; for linear and quadratic weights the two
 * gradings are matched in order, which is least costly for any weight that grows convexly with the grades apart.
 *
 * @throws RangeError when the table is not a square of counts
 * @see Cohen 1960, Educ Psychol Meas 20:37-46 (kappa M); for ordered weights the north-west corner rule of
 *   transport with a convex cost (Hoffman 1963, On simple linear programming problems)
 * @example kappaMaximum([[40, 9], [6, 45]]).estimate // => 0.93990384615
 */
export function kappaMaximum(
  table: SquareTable,
  options: { readonly weights?: NamedWeights } = {},
): KappaMaximum | NotEstimable {
  requireOptions("kappaMaximum", options, ["weights"]);
  const { weights = "unweighted" } = options;
  const { n, rows, columns } = tableMargins("kappaMaximum", table);
  const disagreement = disagreementWeights("kappaMaximum", table.length, weights);
  const best = weights === "unweighted" ? diagonalFirst(rows, columns) : inOrder(rows, columns);
  let apart = 0;
  let expected = 0;
  disagreement.forEach((row, i) =>
    row.forEach((weight, j) => {
      apart += weight * best[i]![j]!;
      expected += weight * rows[i]! * columns[j]!;
    }),
  );
  if (expected === 0) return { estimate: null, because: "both raters used only one and the same grade" };
  return { method: "kappa-maximum", weights, estimate: 1 - (apart * n) / expected, table: best };
}

/** Everything that can agree agrees; the rest is matched in order. */
function diagonalFirst(rows: readonly number[], columns: readonly number[]): number[][] {
  const shared = rows.map((count, i) => Math.min(count, columns[i]!));
  const rest = inOrder(
    rows.map((count, i) => count - shared[i]!),
    columns.map((count, i) => count - shared[i]!),
  );
  return rest.map((row, i) => row.map((count, j) => (i === j ? shared[i]! : count)));
}

function inOrder(rows: readonly number[], columns: readonly number[]): number[][] {
  const left = [...columns];
  return rows.map((count) => {
    let toPlace = count;
    return left.map((free, j) => {
      const placed = Math.min(toPlace, free);
      toPlace -= placed;
      left[j] = free - placed;
      return placed;
    });
  });
}
