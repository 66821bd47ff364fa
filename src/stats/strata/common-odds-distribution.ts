import type { StratumCells } from "./strata.js";

/**
 * Distribution of the first group's successes summed over strata, all margins fixed, when every stratum has the odds
 * ratio exp(theta): the convolution of one noncentral hypergeometric distribution a stratum.
 */
export interface CommonOddsDistribution {
  /** Log odds ratio at which the weights were made. */
  readonly theta: number;
  /** The smallest sum with a weight. */
  readonly low: number;
  /** Log weights from there up, up to one constant; sums further out have none that a double holds. */
  readonly logWeights: Float64Array;
}

/**
 * Convolves the strata at the given log odds ratio, leaving out weights below `least` of the largest. Solving near the
 * largest needs none below 1e-120, and products of such stay clear of the slow subnormal numbers.
 */
export function commonOddsDistribution(
  strata: readonly StratumCells[],
  theta: number,
  least = 0,
): CommonOddsDistribution {
  let sum: StratumWeights = { low: 0, weights: Float64Array.of(1) };
  for (const stratum of strata) sum = convolve(sum, trimmed(stratumWeights(stratum, theta), least), least);
  return { theta, low: sum.low, logWeights: sum.weights.map(Math.log) };
}

/** Multiplications that the convolution takes, from the spread of each stratum at an odds ratio of 1. */
export function convolutionCost(strata: readonly StratumCells[]): number {
  let [length, cost] = [1, 0];
  for (const { n1, n2, m1, m0, total } of strata) {
    const support = Math.min(n1, m1) - Math.max(0, m1 - n2) + 1;
    const spread = Math.sqrt((n1 / total) * (n2 / total) * (m1 / total) * m0);
    // Weights vanish below 1e-308 of the mode, some 38 standard deviations away.
    const own = Math.min(support, 76 * spread + 100);
    cost += length * own;
    length += own;
  }
  return cost;
}

/** What the distribution says at another log odds ratio about sums from `observed` up and down. */
export interface CommonOddsView {
  readonly mean: number;
  readonly variance: number;
  readonly atMost: number;
  readonly atLeast: number;
}

/** Moves the distribution to another log odds ratio (an exponential tilt) and sums it. */
export function viewAt(distribution: CommonOddsDistribution, theta: number, observed: number): CommonOddsView {
  const { low, logWeights } = distribution;
  const tilt = theta - distribution.theta;
  let highest = -Infinity;
  for (let i = 0; i < logWeights.length; i++) highest = Math.max(highest, logWeights[i]! + i * tilt);
  const at = observed - low;
  let [all, first, second, atMost, atLeast] = [0, 0, 0, 0, 0];
  for (let i = 0; i < logWeights.length; i++) {
    const weight = Math.exp(logWeights[i]! + i * tilt - highest);
    const distance = i - at;
    all += weight;
    first += distance * weight;
    second += distance * distance * weight;
    if (i <= at) atMost += weight;
    if (i >= at) atLeast += weight;
  }
  const mean = first / all;
  return { mean: observed + mean, variance: second / all - mean ** 2, atMost: atMost / all, atLeast: atLeast / all };
}

/** Weights of the first cell of a stratum from `low` up, 1 at their mode; the first and the last are above 0. */
export interface StratumWeights {
  readonly low: number;
  readonly weights: Float64Array;
}

/** Noncentral hypergeometric weights by ratios from their mode (Liao and Rosen 2001, Am Stat 55:366-369). */
export function stratumWeights({ n1, n2, m1 }: StratumCells, theta: number): StratumWeights {
  const low = Math.max(0, m1 - n2);
  const high = Math.min(n1, m1);
  const odds = Math.exp(theta);
  const ratio = (x: number): number => (odds * (n1 - x) * (m1 - x)) / ((x + 1) * (n2 - m1 + x + 1));
  // The ratios fall, so the mode is the first place where the next weight is not larger.
  let mode = low;
  for (let beyond = high; mode < beyond;) {
    const middle = Math.floor((mode + beyond) / 2);
    if (ratio(middle) > 1) mode = middle + 1;
    else beyond = middle;
  }
  const up: number[] = [];
  for (let [x, weight] = [mode, 1]; x < high; x++) {
    weight *= ratio(x);
    if (weight === 0) break;
    up.push(weight);
  }
  const down: number[] = [];
  for (let [x, weight] = [mode, 1]; x > low; x--) {
    weight /= ratio(x - 1);
    if (weight === 0) break;
    down.push(weight);
  }
  return { low: mode - down.length, weights: Float64Array.from([...down.toReversed(), 1, ...up]) };
}

function convolve(x: StratumWeights, y: StratumWeights, least: number): StratumWeights {
  const sum = new Float64Array(x.weights.length + y.weights.length - 1);
  x.weights.forEach((weight, i) => {
    for (let j = 0; j < y.weights.length; j++) sum[i + j]! += weight * y.weights[j]!;
  });
  // The largest weight goes back to 1, so that many strata neither overflow nor underflow.
  let highest = 0;
  for (const weight of sum) highest = Math.max(highest, weight);
  return trimmed({ low: x.low + y.low, weights: sum.map((weight) => weight / highest) }, least);
}

function trimmed({ low, weights }: StratumWeights, least: number): StratumWeights {
  const first = weights.findIndex((weight) => weight > least);
  const last = weights.findLastIndex((weight) => weight > least);
  return { low: low + first, weights: weights.subarray(first, last + 1) };
}
