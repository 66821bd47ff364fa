/** Exact whole-number arithmetic for tests: binomial coefficients, and a quotient of two BigInts as a double. */

const rows: bigint[][] = [[1n]];

/** Ways to choose k of n, exactly. */
export function choose(n: number, k: number): bigint {
  while (rows.length <= n) {
    const last = rows[rows.length - 1]!;
    rows.push([1n, ...last.slice(1).map((value, i) => value + last[i]!), 1n]);
  }
  return rows[n]![k] ?? 0n;
}

/** x / y for y > 0, right to 60 bits or more whatever the sizes. */
export function quotient(x: bigint, y: bigint): number {
  if (x === 0n) return 0;
  const shift = BigInt(Math.max(0, 64 + y.toString(2).length - x.toString(2).length));
  const scaled = (x << shift) / y;
  const excess = Math.max(0, scaled.toString(2).length - 64);
  return Number(scaled >> BigInt(excess)) * 2 ** (excess - Number(shift));
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
