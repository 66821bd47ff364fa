import { random } from "../../numeric/random.js";
import { requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { disagreementWeights, namedWeights, type NamedWeights } from "./disagreement-weights.js";
import { permutationDistribution } from "./permutation-distribution.js";
import { requireResamples } from "./require-resamples.js";
import { tableMargins, type SquareTable, type TableMargins } from "./square-table.js";

interface PermutationShared {
  readonly method: "exact permutation" | "sampled permutation";
  readonly weights: NamedWeights;
  readonly n: number;
}

export type KappaPermutation = PermutationShared &
  (
    | {
        readonly estimate: number;
        /** Probability of a kappa at least as large, at most as large, and twice the smaller, when grading is unrelated. */
        readonly greater: number;
        readonly less: number;
        readonly doubled: number;
        /** Permutations drawn, when sampled. */
        readonly permutations?: number;
        readonly seed?: number;
      }
    | NotEstimable
  );

/**
 * Test of kappa 0 by all ways to pair the two raters' grades, keeping how often each gave each grade.
 *
 * Exact while the tables with these margins can be gone through, else by sampled permutations, and the method says which.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @param options.weights "unweighted" (default), "linear" or "quadratic"
 * @param options.permutations drawn when the exact way is too long, at least 100; default 10,000
 * @param options.seed of the drawn permutations; default 1
 * @throws RangeError when table, permutations or seed are out of range; TypeError for other weights or unknown options
 * @see Hubert 1978, Br J Math Stat Psychol 31:180-183; sampled p as in Phipson and Smyth 2010, Stat Appl Genet Mol Biol 9:39
 * @example kappaPermutation([[3, 0], [0, 3]]).greater // => 0.05
 */
export function kappaPermutation(
  table: SquareTable,
  options: { readonly weights?: NamedWeights; readonly permutations?: number; readonly seed?: number } = {},
): KappaPermutation {
  requireOptions("kappaPermutation", options, ["weights", "permutations", "seed"]);
  const { weights = "unweighted", permutations = 10_000, seed = 1 } = options;
  requireResamples("kappaPermutation", permutations);
  if (!namedWeights.includes(weights))
    throw new TypeError(
      `kappaPermutation: weights must be one of ${namedWeights.join(", ")}, got "${String(weights)}"`,
    );
  const margins = tableMargins("kappaPermutation", table);
  const disagreement = disagreementWeights("kappaPermutation", table.length, weights);
  const sum = (cell: (i: number, j: number) => number): number =>
    disagreement.reduce((total, row, i) => total + row.reduce((s, weight, j) => s + weight * cell(i, j), 0), 0);
  const apart = sum((i, j) => table[i]![j]!);
  const expected = sum((i, j) => margins.rows[i]! * margins.columns[j]!);
  const distribution = permutationDistribution(margins, disagreement);
  const shared = {
    method: distribution ? "exact permutation" : "sampled permutation",
    weights,
    n: margins.n,
  } as const;
  if (expected === 0) return { ...shared, estimate: null, because: "both raters used only one and the same grade" };
  const estimate = 1 - (apart * margins.n) / expected;
  // Less disagreement is more kappa.
  if (distribution) return { ...shared, estimate, ...tails(distribution, apart) };
  return { ...shared, estimate, ...sampled(margins, disagreement, apart, { permutations, seed }), permutations, seed };
}

function tails(distribution: Float64Array, apart: number) {
  const add = (from: number, to: number): number => distribution.subarray(from, to).reduce((s, p) => s + p, 0);
  const greater = Math.min(1, add(0, apart + 1));
  const less = Math.min(1, add(apart, distribution.length));
  return { greater, less, doubled: Math.min(1, 2 * Math.min(greater, less)) };
}

function sampled(
  { rows, columns }: TableMargins,
  disagreement: readonly (readonly number[])[],
  apart: number,
  { permutations, seed }: { readonly permutations: number; readonly seed: number },
) {
  const spelled = (counts: readonly number[]): number[] =>
    counts.flatMap((count, grade) => new Array<number>(count).fill(grade));
  const first = spelled(rows);
  const second = spelled(columns);
  const stream = random(seed);
  let atMost = 1;
  let atLeast = 1;
  for (let draw = 0; draw < permutations; draw++) {
    let value = 0;
    stream.shuffled(second).forEach((grade, image) => (value += disagreement[first[image]!]![grade]!));
    if (value <= apart) atMost++;
    if (value >= apart) atLeast++;
  }
  // The data are one of the permutations, so p is never 0.
  const greater = atMost / (permutations + 1);
  const less = atLeast / (permutations + 1);
  return { greater, less, doubled: Math.min(1, 2 * Math.min(greater, less)) };
}
