import type { StratumCells } from "./strata.js";

/**
 * Distribution of the first group's successes summed over strata, all margins fixed, when every stratum has the odds
 * ratio exp(theta): the convolution of one noncentral hypergeometric distribution a stratum.
 */
export interface CommonOddsDistribution {
  /** Log odds ratio at which the weights were made. */
  readonly theta: number;
  /** The smallest sum. */
  readonly low: number;
  /** Log weights, up to one constant; -Infinity where they underflow. */
  readonly logWeights: Float64Array;
}

/** Convolves the strata at the given log odds ratio. */
export function commonOddsDistribution(strata: readonly StratumCells[], theta: number): CommonOddsDistribution {
  let weights: Float64Array = Float64Array.of(1);
  let low = 0;
  for (const stratum of strata) {
    weights = convolve(weights, stratumWeights(stratum, theta));
    low += Math.max(0, stratum.m1 - stratum.n2);
  }
  return { theta, low, logWeights: weights.map(Math.log) };
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

/** Noncentral hypergeometric weights by ratios from their mode (Liao and Rosen 2001, Am Stat 55:366-369), 1 there. */
export function stratumWeights({ n1, n2, m1 }: StratumCells, theta: number): Float64Array {
  const low = Math.max(0, m1 - n2);
  const high = Math.min(n1, m1);
  const weights = new Float64Array(high - low + 1);
  const ratio = (x: number): number => (Math.exp(theta) * (n1 - x) * (m1 - x)) / ((x + 1) * (n2 - m1 + x + 1));
  // The ratios fall, so the mode is the first place where the next weight is smaller.
  let mode = low;
  for (let [from, to] = [low, high]; from < to;) {
    const middle = Math.floor((from + to) / 2);
    if (ratio(middle) > 1) from = middle + 1;
    else to = middle;
    mode = from;
  }
  weights[mode - low] = 1;
  for (let x = mode; x < high; x++) weights[x + 1 - low] = weights[x - low]! * ratio(x);
  for (let x = mode; x > low; x--) weights[x - 1 - low] = weights[x - low]! / ratio(x - 1);
  return weights;
}

function convolve(x: Float64Array, y: Float64Array): Float64Array {
  const sum = new Float64Array(x.length + y.length - 1);
  for (let i = 0; i < x.length; i++) for (let j = 0; j < y.length; j++) sum[i + j]! += x[i]! * y[j]!;
  // The largest weight goes back to 1, so that many strata neither overflow nor underflow.
  const highest = sum.reduce((most, weight) => Math.max(most, weight), 0);
  return sum.map((weight) => weight / highest);
}
