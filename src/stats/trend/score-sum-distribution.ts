import type { Count } from "../types.js";

/** Groups with cases, scores moved to start at 0 and divided by their common divisor, the rarer outcome counted. */
export interface Lattice {
  readonly groups: readonly { readonly score: number; readonly trials: number }[];
  readonly rarer: number;
  readonly observed: number;
  /** Whether failures are counted, so that a rising share of successes is a falling one here. */
  readonly reversed: boolean;
}

/** The lattice of a trend with at least one case and integer scores. */
export function toLattice(counts: readonly Count[], scores: readonly number[]): Lattice {
  const used = counts.map((count, i) => ({ ...count, score: scores[i]! })).filter(({ trials }) => trials > 0);
  const lowest = Math.min(...used.map(({ score }) => score));
  const unit = used.reduce((divisor, { score }) => greatestCommonDivisor(score - lowest, divisor), 0) || 1;
  const successes = used.reduce((sum, group) => sum + group.successes, 0);
  const total = used.reduce((sum, group) => sum + group.trials, 0);
  const reversed = successes > total - successes;
  const groups = used.map((group) => ({
    score: (group.score - lowest) / unit,
    trials: group.trials,
    count: reversed ? group.trials - group.successes : group.successes,
  }));
  // The largest group last: its count is fixed by the others.
  groups.sort((x, y) => x.trials - y.trials);
  const observed = groups.reduce((sum, { score, count }) => sum + score * count, 0);
  return { groups, rarer: reversed ? total - successes : successes, observed, reversed };
}

function greatestCommonDivisor(x: number, y: number): number {
  return y === 0 ? x : greatestCommonDivisor(y, x % y);
}

/** Multiplications needed: for each group, the states reached before it times its own possible counts. */
export function convolutionCost({ groups, rarer }: Lattice): number {
  let before = 0;
  let highest = 0;
  let sum = 0;
  groups.forEach(({ score, trials }, i) => {
    const own = i === groups.length - 1 ? 1 : Math.min(trials, rarer) + 1;
    const reached = Math.min(before, rarer);
    sum += (reached + 1) * ((reached * highest) / 2 + 1) * own;
    before += trials;
    highest = Math.max(highest, score);
  });
  return sum;
}

/** Unnormalised weights of the score sum, with the score sum of the first of them. */
export interface ScoreSumWeights {
  readonly low: number;
  readonly weights: Float64Array;
}

/** Weights of the score sums given the total of the rarer outcome, group by group: a table of weights by total so far. */
export function scoreSumWeights({ groups, rarer }: Lattice): ScoreSumWeights {
  const total = groups.reduce((sum, { trials }) => sum + trials, 0);
  const odds = rarer === 0 ? 1 : rarer / (total - rarer);
  let left = total;
  let states: (ScoreSumWeights | undefined)[] = [{ low: 0, weights: Float64Array.of(1) }];
  for (const { score, trials } of groups) {
    left -= trials;
    const own = binomialWeights(trials, Math.min(trials, rarer), odds);
    const next: (ScoreSumWeights | undefined)[] = [];
    for (let reached = Math.max(0, rarer - left); reached <= rarer; reached++) {
      const parts: { from: ScoreSumWeights; taken: number }[] = [];
      for (let taken = Math.max(0, reached - states.length + 1); taken <= Math.min(trials, reached); taken++) {
        const from = states[reached - taken];
        if (from) parts.push({ from, taken });
      }
      if (parts.length > 0) next[reached] = merge(parts, score, own);
    }
    states = next;
  }
  return states[rarer]!;
}

function merge(
  parts: readonly { readonly from: ScoreSumWeights; readonly taken: number }[],
  score: number,
  own: Float64Array,
): ScoreSumWeights {
  let low = Infinity;
  let high = -Infinity;
  for (const { from, taken } of parts) {
    low = Math.min(low, from.low + score * taken);
    high = Math.max(high, from.low + from.weights.length - 1 + score * taken);
  }
  const weights = new Float64Array(high - low + 1);
  for (const { from, taken } of parts) {
    const offset = from.low + score * taken - low;
    const factor = own[taken]!;
    for (let i = 0; i < from.weights.length; i++) weights[offset + i]! += from.weights[i]! * factor;
  }
  return { low, weights };
}

/** Binomial weights of 0 to `most` successes at the given odds, 1 at their mode: no factorial loses a digit. */
function binomialWeights(trials: number, most: number, odds: number): Float64Array {
  const weights = new Float64Array(most + 1);
  const mode = Math.min(most, Math.floor(((trials + 1) * odds) / (1 + odds)));
  weights[mode] = 1;
  for (let x = mode; x < most; x++) weights[x + 1] = (weights[x]! * odds * (trials - x)) / (x + 1);
  for (let x = mode; x > 0; x--) weights[x - 1] = (weights[x]! * x) / ((trials - x + 1) * odds);
  return weights;
}
