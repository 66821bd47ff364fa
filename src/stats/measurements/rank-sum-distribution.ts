import type { SumDistribution } from "./sum-tails.js";

/**
 * Exact null distribution of the sum of `size` ranks drawn without replacement: the shift algorithm in two dimensions,
 * the table kept to sums that can be reached.
 *
 * @param ranks positive integers (twice the midranks when there are ties)
 * @param size how many are drawn, 0 to all
 * @see Streitberg and Roehmel 1986, Statistical Software Newsletter 12:10-17
 * @example rankSumDistribution([1, 2, 3], 1).probabilities // => [0.333333333333, 0.333333333333, 0.333333333333]
 */
export function rankSumDistribution(ranks: readonly number[], size: number): SumDistribution {
  const sorted = [...ranks].sort((a, b) => a - b);
  const from = [0];
  for (const rank of sorted) from.push(from.at(-1)! + rank);
  const least = (count: number): number => from[count]!;
  const most = (count: number, of: number): number => from[of]! - from[of - count]!;
  // ways[count][sum - least(count)]; doubles, since only the ratios matter.
  const ways = Array.from(
    { length: size + 1 },
    (_, count) => new Float64Array(most(count, sorted.length) - least(count) + 1),
  );
  ways[0]![0] = 1;
  sorted.forEach((rank, index) => {
    for (let count = Math.min(size, index + 1); count >= 1; count--) {
      const into = ways[count]!;
      const out = ways[count - 1]!;
      const top = most(count - 1, index) - least(count - 1);
      const shift = rank + least(count - 1) - least(count);
      for (let at = 0; at <= top; at++) into[at + shift] = into[at + shift]! + out[at]!;
    }
  });
  const last = ways[size]!;
  const all = last.reduce((sum, way) => sum + way, 0);
  return { smallest: least(size), probabilities: last.map((way) => way / all) };
}
