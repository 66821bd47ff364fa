/**
 * Deviance of x against its mean: x ln(x / mean) + mean - x, without the cancellation that the formula suffers where
 * x is near the mean. Both positive.
 *
 * @see Loader 2000, Fast and accurate computation of binomial probabilities, the function named there bd0
 */
export function deviance(x: number, mean: number): number {
  const difference = x - mean;
  if (Math.abs(difference) < 0.1 * (x + mean)) return nearMean(x, mean, difference);
  const ratio = x / mean;
  const log = ratio > 0 && ratio < Infinity ? Math.log(ratio) : Math.log(x) - Math.log(mean);
  return x * log - difference;
}

function nearMean(x: number, mean: number, difference: number): number {
  const v = difference / (x + mean);
  let sum = difference * v;
  if (Math.abs(sum) < 1e-300) return sum;
  let power = 2 * x * v;
  for (let j = 3; ; j += 2) {
    power *= v * v;
    const next = sum + power / j;
    if (next === sum) return sum;
    sum = next;
  }
}
