/** Probabilities of consecutive integer sums, from `smallest` on. */
export interface SumDistribution {
  readonly smallest: number;
  readonly probabilities: Float64Array;
}

/** The two tails of an observed sum, each with the sum itself, and the two conventions for a two-sided p. */
export interface SumTails {
  /** Probability of a sum no larger than the observed one. */
  readonly less: number;
  /** Probability of a sum no smaller than the observed one. */
  readonly greater: number;
  /** Twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** Probability of a sum at least as far from the mean as the observed one. */
  readonly distance: number;
}

/**
 * Tails of an observed sum, added from their far ends so that small ones keep full precision.
 *
 * @param distribution sums and their probabilities
 * @param observed the sum, an integer
 * @example sumTails({ smallest: 0, probabilities: new Float64Array([0.25, 0.5, 0.25]) }, 0).doubled // => 0.5
 */
export function sumTails(distribution: SumDistribution, observed: number): SumTails {
  const { smallest, probabilities } = distribution;
  const at = observed - smallest;
  const last = probabilities.length - 1;
  let mean = 0;
  for (let index = 0; index <= last; index++) mean += index * probabilities[index]!;
  // Sums are integers and their mean a multiple of 1/n: the slack only takes up rounding.
  const far = Math.abs(at - mean) * (1 - 1e-9);
  const less = addWhile(probabilities, 0, 1, (index) => index <= at);
  const greater = addWhile(probabilities, last, -1, (index) => index >= at);
  const distance =
    addWhile(probabilities, 0, 1, (index) => index <= mean - far) +
    addWhile(probabilities, last, -1, (index) => index > mean - far && index >= mean + far);
  return { less, greater, doubled: Math.min(1, 2 * Math.min(less, greater)), distance: Math.min(1, distance) };
}

function addWhile(probabilities: Float64Array, from: number, step: 1 | -1, holds: (index: number) => boolean): number {
  let sum = 0;
  for (let index = from; index >= 0 && index < probabilities.length && holds(index); index += step)
    sum += probabilities[index]!;
  return Math.min(1, sum);
}
