/**
 * A 32-bit hash of each factorial from 0! to n!, additive over products: sums of hashes are equal whenever the products
 * have the same prime factors, so that paths of equal probability meet without comparing rounded logarithms alone.
 */
export function primeHashes(n: number): Int32Array {
  const hashes = new Int32Array(n + 1);
  const ofPrime = new Map<number, number>();
  for (let x = 2; x <= n; x++) {
    let sum = hashes[x - 1]!;
    let rest = x;
    for (let p = 2; p * p <= rest; p++)
      while (rest % p === 0) {
        sum += hashOfPrime(p, ofPrime);
        rest /= p;
      }
    if (rest > 1) sum += hashOfPrime(rest, ofPrime);
    hashes[x] = sum;
  }
  return hashes;
}

function hashOfPrime(p: number, known: Map<number, number>): number {
  let hash = known.get(p);
  if (hash === undefined) {
    // Two rounds of multiply and shift spread the small primes over 32 bits.
    hash = Math.imul(p ^ 0x9e3779b9, 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 15), 0x27d4eb2f) ^ (hash >>> 13);
    known.set(p, hash);
  }
  return hash;
}
