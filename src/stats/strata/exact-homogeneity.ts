import { stratumWeights } from "./common-odds-distribution.js";
import { informativeStrata, requireStrata, type Stratum, type StratumCells } from "./strata.js";

interface ExactHomogeneity {
  readonly method: "exact homogeneity (Zelen)";
  readonly strata: readonly Stratum[];
}

export interface ExactHomogeneityResult extends ExactHomogeneity {
  /** Probability of the sets of tables that are no likelier than the observed one (relative tolerance 1e-7). */
  readonly p: number;
}

export interface NoExactHomogeneity extends ExactHomogeneity {
  readonly p: null;
  readonly because: string;
}

/** Sets of tables held at most for each half of the strata. */
const MOST_SETS = 2e6;

/**
 * Exact test that the odds ratio is the same in every stratum, given all margins and the first group's successes over
 * all strata: then nothing unknown is left. Strata with an empty margin say nothing and are left out.
 *
 * @param strata successes of trials in two groups for each stratum; a group may be empty (0 of 0)
 * @throws RangeError when a count is out of range
 * @see Zelen 1971, Biometrika 58:129-137
 * @example exactHomogeneity([{ first: { successes: 3, trials: 3 }, second: { successes: 0, trials: 3 } }, { first: { successes: 0, trials: 3 }, second: { successes: 3, trials: 3 } }]).p // => 0.0121951
 */
export function exactHomogeneity(strata: readonly Stratum[]): ExactHomogeneityResult | NoExactHomogeneity {
  requireStrata("exactHomogeneity", strata);
  const input = { method: "exact homogeneity (Zelen)", strata } as const;
  const cells = informativeStrata(strata);
  if (cells.length < 2)
    return {
      ...input,
      p: null,
      because: `homogeneity needs two strata with both groups and both outcomes, there is ${cells.length}`,
    };
  const halves = splitInHalves(cells);
  if (halves.some((half) => half.reduce((product, cell) => product * support(cell), 1) > MOST_SETS))
    return { ...input, p: null, because: "the strata have too many possible tables; use the Breslow-Day test" };
  return { ...input, p: Math.min(1, probability(halves)) };
}

const support = ({ n1, n2, m1 }: StratumCells): number => Math.min(n1, m1) - Math.max(0, m1 - n2) + 1;

/** Two parts with about equally many possible sets of tables: the larger strata are dealt out first. */
function splitInHalves(cells: readonly StratumCells[]): [StratumCells[], StratumCells[]] {
  const halves: [StratumCells[], StratumCells[]] = [[], []];
  const sizes = [1, 1];
  for (const cell of cells.toSorted((x, y) => support(y) - support(x))) {
    const side = sizes[0]! <= sizes[1]! ? 0 : 1;
    halves[side].push(cell);
    sizes[side]! *= support(cell);
  }
  return halves;
}

/** Weights of the sets of tables of some strata, by their sum of first cells above the least. */
interface Sets {
  readonly bySum: readonly Float64Array[];
  readonly observedSum: number;
  readonly observedWeight: number;
}

function probability(halves: readonly [readonly StratumCells[], readonly StratumCells[]]): number {
  // The common odds ratio cancels once the sum is given; a fitting one keeps the observed weights from underflow.
  const theta = commonLogOdds([...halves[0], ...halves[1]]);
  const [x, y] = [setsOf(halves[0], theta), setsOf(halves[1], theta)];
  const sum = x.observedSum + y.observedSum;
  const limit = x.observedWeight * y.observedWeight * (1 + 1e-7);
  let [all, noLikelier] = [0, 0];
  x.bySum.forEach((weights, i) => {
    const partners = y.bySum[sum - i];
    if (!partners) return;
    const sorted = partners.toSorted();
    const upTo = runningSums(sorted);
    for (const weight of weights) {
      all += weight * upTo[sorted.length]!;
      noLikelier += weight * upTo[countUpTo(sorted, limit / weight)]!;
    }
  });
  return noLikelier / all;
}

function commonLogOdds(cells: readonly StratumCells[]): number {
  const above = cells.reduce((sum, { a, d, total }) => sum + (a * d) / total, 0.5);
  const below = cells.reduce((sum, { b, c, total }) => sum + (b * c) / total, 0.5);
  return Math.log(above / below);
}

function setsOf(cells: readonly StratumCells[], theta: number): Sets {
  let bySum: number[][] = [[1]];
  let [observedSum, observedWeight] = [0, 1];
  for (const cell of cells) {
    const { low, weights } = stratumWeights(cell, theta);
    const at = cell.a - low;
    observedSum += at;
    observedWeight *= weights[at] ?? 0;
    const next: number[][] = Array.from({ length: bySum.length + weights.length - 1 }, () => []);
    bySum.forEach((sets, i) => {
      for (const [j, weight] of weights.entries()) for (const set of sets) next[i + j]!.push(set * weight);
    });
    bySum = next;
  }
  return { bySum: bySum.map((sets) => Float64Array.from(sets)), observedSum, observedWeight };
}

function runningSums(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i]! + values[i]!;
  return sums;
}

/** How many of the sorted values are at most the limit. */
function countUpTo(sorted: Float64Array, limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
