import { random } from "../../numeric/random.js";
import { rankSumDistribution } from "./rank-sum-distribution.js";
import { sumTails, type SumTails } from "./sum-tails.js";
import { wholeSteps } from "./whole-steps.js";

/** Tails of a sum among all ways that chance could have shared out the same numbers. */
export interface PermutedTails {
  readonly distribution: "exact" | "Monte Carlo";
  readonly p: SumTails;
  /** Of Monte Carlo only: how many were drawn, the seed, and the standard error of the doubled p. */
  readonly simulation?: { readonly draws: number; readonly seed: number; readonly standardError: number };
}

/** Additions or combinations spent on an exact answer: well under a second. */
const mostSteps = 6e8;
const mostCombinations = 4e6;
/** Of the table of sums, 8 bytes each. */
const mostCells = 5e6;

/**
 * Where the sum of the first `size` scores lies among the sums of every choice of as many scores: exact by the shift
 * algorithm for whole steps, else by enumeration, else by Monte Carlo with (b + 1) / (B + 1).
 *
 * @param scores finite numbers, those of the observed group first
 * @param options.size number of scores in the observed group, 1 to all but one
 * @param options.seed of the Monte Carlo draws
 * @param options.draws of Monte Carlo
 * @see Streitberg and Roehmel 1986, Statistical Software Newsletter 12:10-17; Phipson and Smyth 2010, Stat Appl Genet
 *   Mol Biol 9:39
 * @example permutedSums([5, 6, 1, 2], { size: 2, seed: 1, draws: 999 }).p.greater // => 0.166666666667
 */
export function permutedSums(
  scores: readonly number[],
  options: { readonly size: number; readonly seed: number; readonly draws: number },
): PermutedTails {
  const { size, seed, draws } = options;
  const steps = wholeSteps(scores);
  if (steps !== null) {
    const range = steps.counts.reduce((sum, count) => sum + count, 0);
    const smaller = Math.min(size, scores.length - size);
    if (scores.length * smaller * range <= mostSteps && smaller * range <= mostCells) {
      const observed = steps.counts.slice(0, size).reduce((sum, count) => sum + count, 0);
      return { distribution: "exact", p: shifted(steps.counts, size, observed) };
    }
  }
  const count = tally(scores, size);
  if (combinations(scores.length, size) <= mostCombinations) {
    everyChoice(scores, size, count.add);
    return { distribution: "exact", p: count.tails(0) };
  }
  sampled(scores, { size, seed, draws }, count.add);
  const p = count.tails(1);
  return { distribution: "Monte Carlo", p, simulation: { draws, seed, standardError: errorOf(p, draws) } };
}

/** Draws the smaller group, whose sum tells that of the other. */
function shifted(counts: readonly number[], size: number, observed: number): SumTails {
  const rest = counts.length - size;
  if (size <= rest) return sumTails(rankSumDistribution(counts, size), observed);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const { less, greater, doubled, distance } = sumTails(rankSumDistribution(counts, rest), total - observed);
  return { less: greater, greater: less, doubled, distance };
}

/** Standard error of a doubled p: twice that of the tail. */
export function errorOf(p: SumTails, draws: number): number {
  const tail = Math.min(p.less, p.greater);
  return 2 * Math.sqrt((tail * (1 - tail)) / draws);
}

/** Counts sums against the observed one; sums equal but for rounding count as equal. */
function tally(
  scores: readonly number[],
  size: number,
): { add: (sum: number) => void; tails: (extra: number) => SumTails } {
  const observed = scores.slice(0, size).reduce((sum, score) => sum + score, 0);
  const mean = (size * scores.reduce((sum, score) => sum + score, 0)) / scores.length;
  const slack = 1e-11 * scores.reduce((sum, score) => sum + Math.abs(score), 0);
  return tallyAgainst({ observed, mean, slack });
}

/** Counts of sums below, above, and as far from the mean as the observed one. */
export function tallyAgainst(against: { readonly observed: number; readonly mean: number; readonly slack: number }): {
  add: (sum: number) => void;
  tails: (extra: number) => SumTails;
} {
  const { observed, mean, slack } = against;
  const far = Math.abs(observed - mean) - slack;
  let [all, low, high, away] = [0, 0, 0, 0];
  return {
    add(sum) {
      all++;
      if (sum <= observed + slack) low++;
      if (sum >= observed - slack) high++;
      if (Math.abs(sum - mean) >= far) away++;
    },
    tails(extra) {
      const [less, greater] = [(low + extra) / (all + extra), (high + extra) / (all + extra)];
      const doubled = Math.min(1, 2 * Math.min(less, greater));
      return { less, greater, doubled, distance: (away + extra) / (all + extra) };
    },
  };
}

/** Sums of random choices, by drawing whichever of the two groups is smaller. */
function sampled(
  scores: readonly number[],
  by: { readonly size: number; readonly seed: number; readonly draws: number },
  visit: (sum: number) => void,
): void {
  const stream = random(by.seed);
  const pool = Float64Array.from(scores);
  const total = scores.reduce((sum, score) => sum + score, 0);
  const smaller = Math.min(by.size, scores.length - by.size);
  for (let draw = 0; draw < by.draws; draw++) {
    let sum = 0;
    for (let at = 0; at < smaller; at++) {
      // A multiple of 2^-53 times the number left: no bias that a count of draws could show.
      const pick = at + Math.floor(stream.uniform() * (pool.length - at));
      const score = pool[pick]!;
      pool[pick] = pool[at]!;
      pool[at] = score;
      sum += score;
    }
    visit(smaller === by.size ? sum : total - sum);
  }
}

function combinations(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= Math.min(k, n - k); i++) ways = (ways * (n - i + 1)) / i;
  return ways;
}

function everyChoice(scores: readonly number[], size: number, visit: (sum: number) => void): void {
  const choose = (from: number, left: number, sum: number): void => {
    if (left === 0) return visit(sum);
    for (let at = from; at <= scores.length - left; at++) choose(at + 1, left - 1, sum + scores[at]!);
  };
  choose(0, size, 0);
}
