import { random } from "../../numeric/random.js";
import { requireNumbers, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { errorOf, tallyAgainst, type PermutedTails } from "./permuted-sums.js";
import { requireSimulation } from "./require-simulation.js";
import { signedRankDistribution } from "./signed-rank-distribution.js";
import { sumTails } from "./sum-tails.js";
import { wholeSteps } from "./whole-steps.js";

export interface PairedPermutationTest extends PermutedTails {
  readonly method: "permutation test of paired differences";
  readonly n: number;
  /** Mean difference. */
  readonly estimate: number;
}

const mostSteps = 2e8;
const mostPatterns = 22;

/**
 * Permutation test of differences within pairs: how often would signs given by tossing a coin give a mean as large?
 * Exact by the shift algorithm for whole steps, else by enumeration to 22 differences, else Monte Carlo.
 *
 * @param differences finite numbers, at least one; take them from `pairedDifferences`
 * @param options.seed of the Monte Carlo draws; default 1
 * @param options.draws of Monte Carlo; default 9999
 * @returns the test, or null with the reason when every difference is zero
 * @throws RangeError when there is no difference, one is not finite, or seed or draws are no whole numbers
 * @see Fisher 1935, The Design of Experiments, section 21
 * @example pairedPermutationTest([1, 2, 3]).p.greater // => 0.125
 */
export function pairedPermutationTest(
  differences: readonly number[],
  options: { readonly seed?: number; readonly draws?: number } = {},
): PairedPermutationTest | NotEstimable {
  requireOptions("pairedPermutationTest", options, ["seed", "draws"]);
  const { seed = 1, draws = 9999 } = options;
  requireSimulation("pairedPermutationTest", { seed, draws });
  requireNumbers("pairedPermutationTest", "differences", differences, 1);
  if (differences.every((difference) => difference === 0))
    return { estimate: null, because: "every difference is zero" };
  return {
    method: "permutation test of paired differences",
    n: differences.length,
    estimate: differences.reduce((sum, difference) => sum + difference, 0) / differences.length,
    ...signTails(differences, { seed, draws }),
  };
}

function signTails(
  differences: readonly number[],
  options: { readonly seed: number; readonly draws: number },
): PermutedTails {
  const { seed, draws } = options;
  const sizes = differences.map(Math.abs);
  // The step is counted from 0, which joins the sizes for that.
  const steps = wholeSteps([0, ...sizes])?.counts.slice(1);
  if (steps && differences.length * steps.reduce((sum, step) => sum + step, 0) <= mostSteps) {
    const positive = steps.reduce((sum, step, index) => (differences[index]! > 0 ? sum + step : sum), 0);
    return { distribution: "exact", p: sumTails(signedRankDistribution(steps), positive) };
  }
  const observed = differences.reduce((sum, difference) => sum + difference, 0);
  const slack = 1e-11 * sizes.reduce((sum, size) => sum + size, 0);
  const count = tallyAgainst({ observed, mean: 0, slack });
  if (sizes.length <= mostPatterns) {
    everyPattern(sizes, count.add);
    return { distribution: "exact", p: count.tails(0) };
  }
  const stream = random(seed);
  for (let draw = 0; draw < draws; draw++) count.add(randomSum(sizes, stream.uniform));
  const p = count.tails(1);
  return { distribution: "Monte Carlo", p, simulation: { draws, seed, standardError: errorOf(p, draws) } };
}

/** Sums of all sign patterns in Gray's order, in which one sign changes at a time. */
function everyPattern(sizes: readonly number[], visit: (sum: number) => void): void {
  const signs = sizes.map(() => 1);
  let sum = sizes.reduce((total, size) => total + size, 0);
  visit(sum);
  for (let pattern = 1; pattern < 2 ** sizes.length; pattern++) {
    const at = 31 - Math.clz32(pattern & -pattern);
    signs[at] = -signs[at]!;
    sum += 2 * signs[at]! * sizes[at]!;
    visit(sum);
  }
}

function randomSum(sizes: readonly number[], uniform: () => number): number {
  let sum = 0;
  for (const size of sizes) sum += uniform() < 0.5 ? -size : size;
  return sum;
}
