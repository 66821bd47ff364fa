import { requireNumbers, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { permutedSums, type PermutedTails } from "./permuted-sums.js";
import { requireSimulation } from "./require-simulation.js";

export interface PermutationTest extends PermutedTails {
  readonly method: "permutation test of the difference of means";
  readonly n: { readonly first: number; readonly second: number };
  /** Mean of the first less mean of the second. */
  readonly estimate: number;
}

/**
 * Permutation test of the difference of two means: how often would sharing out the same values at random give a
 * difference as large?
 *
 * @param groups.first finite numbers
 * @param groups.second finite numbers
 * @param options.seed of the Monte Carlo draws, used only where an exact answer would take too long; default 1
 * @param options.draws of Monte Carlo; default 9999
 * @returns the test, or null with the reason when a group is empty or all values are equal
 * @throws RangeError when a value is not finite, or seed or draws are no whole numbers
 * @see Pitman 1937, J R Stat Soc Suppl 4:119-130
 * @example permutationTest({ first: [5, 6], second: [1, 2] }).p.doubled // => 0.333333333333
 */
export function permutationTest(
  groups: { readonly first: readonly number[]; readonly second: readonly number[] },
  options: { readonly seed?: number; readonly draws?: number } = {},
): PermutationTest | NotEstimable {
  requireOptions("permutationTest", options, ["seed", "draws"]);
  const { seed = 1, draws = 9999 } = options;
  requireSimulation("permutationTest", { seed, draws });
  const { first, second } = groups;
  requireNumbers("permutationTest", "first", first, 0);
  requireNumbers("permutationTest", "second", second, 0);
  if (first.length === 0 || second.length === 0)
    return { estimate: null, because: `the ${first.length === 0 ? "first" : "second"} group is empty` };
  const all = [...first, ...second];
  if (all.every((value) => value === all[0])) return { estimate: null, because: "all values are equal" };
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    method: "permutation test of the difference of means",
    n: { first: first.length, second: second.length },
    estimate: mean(first) - mean(second),
    ...permutedSums(all, { size: first.length, seed, draws }),
  };
}
