/** Throws unless the number of resamples is an integer of at least 100. */
export function requireResamples(caller: string, resamples: number): void {
  if (!(Number.isSafeInteger(resamples) && resamples >= 100))
    throw new RangeError(`${caller}: resamples must be an integer of at least 100, got ${resamples}`);
}
