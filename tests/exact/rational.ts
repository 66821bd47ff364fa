// Exact arithmetic with BigInt, the oracle for probabilities that are ratios of whole numbers.

/** The ratio of two whole numbers (denominator above 0) as the double next to it, also below 1e-308 of the other. */
export function ratio(numerator: bigint, denominator: bigint): number {
  if (numerator === 0n) return 0;
  const shift = bits(denominator) - bits(numerator) + 70;
  const scaled = shift >= 0 ? (numerator << BigInt(shift)) / denominator : numerator / (denominator << BigInt(-shift));
  return Number(scaled) * 2 ** -shift;
}

/** Number of ways to choose k of n. */
export function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let i = 1n; i <= BigInt(Math.min(k, n - k)); i++) ways = (ways * (BigInt(n) - i + 1n)) / i;
  return ways;
}

/** Ways to draw each possible first cell of a table with rows m and n and first column k, from the smallest cell up. */
export function hypergeometricWays(m: number, n: number, k: number): { readonly low: number; readonly ways: bigint[] } {
  const low = Math.max(0, k - n);
  const ways = [choose(m, low) * choose(n, k - low)];
  for (let x = low; x < Math.min(m, k); x++)
    ways.push((ways.at(-1)! * BigInt(m - x) * BigInt(k - x)) / (BigInt(x + 1) * BigInt(n - k + x + 1)));
  return { low, ways };
}

/** A finite double as an exact fraction. */
export function fraction(x: number): { readonly above: bigint; readonly below: bigint } {
  let below = 1n;
  let value = x;
  while (!Number.isInteger(value)) {
    value *= 2;
    below *= 2n;
  }
  return { above: BigInt(value), below };
}

export function sum(values: readonly bigint[]): bigint {
  return values.reduce((total, value) => total + value, 0n);
}

function bits(value: bigint): number {
  return value.toString(16).length * 4;
}
