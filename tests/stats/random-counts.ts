/** A small seeded generator for tests (Lehmer's, modulus 2^31 - 1): integers from 0 to `most`. */
export function randomIntegers(seed: number): (most: number) => number {
  let state = seed;
  return (most) => {
    state = (state * 48271) % 2147483647;
    return Math.floor((state / 2147483647) * (most + 1));
  };
}
