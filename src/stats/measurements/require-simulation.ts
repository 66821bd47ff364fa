/** Throws unless the seed is a whole number of 32 bits and the number of draws a whole number, 1 to 10 million. */
export function requireSimulation(caller: string, options: { readonly seed: number; readonly draws: number }): void {
  const { seed, draws } = options;
  if (!(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32))
    throw new RangeError(`${caller}: seed must be an integer from 0 to 4294967295, got ${seed}`);
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 1e7))
    throw new RangeError(`${caller}: draws must be an integer from 1 to 10000000, got ${draws}`);
}
