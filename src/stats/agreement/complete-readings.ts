/** The rows in which every rater gave a value. */
export function completeReadings(readings: readonly (readonly (number | null)[])[]): readonly (readonly number[])[] {
  return readings.filter((row): row is readonly number[] => row.every((value) => value !== null));
}
