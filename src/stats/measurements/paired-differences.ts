import { requireNumbers } from "../guards.js";

/**
 * First minus second, pair by pair, without the rounding noise of decimal fractions, so that equal differences tie
 * and 0.3 - 0.2 - 0.1 style residues are zeros: each difference is rounded to the twelfth significant digit of the
 * larger number of its pair.
 *
 * @param pairs.first finite numbers
 * @param pairs.second finite numbers, as many
 * @throws RangeError when the two differ in length or a value is not finite
 * @example pairedDifferences({ first: [150.3, 12], second: [150.1, 12] }) // => [0.2, 0]
 */
export function pairedDifferences(pairs: {
  readonly first: readonly number[];
  readonly second: readonly number[];
}): readonly number[] {
  const { first, second } = pairs;
  requireNumbers("pairedDifferences", "first", first, 0);
  requireNumbers("pairedDifferences", "second", second, 0);
  if (first.length !== second.length)
    throw new RangeError(
      `pairedDifferences: first and second must be equally long, got ${first.length} and ${second.length}`,
    );
  return first.map((value, index) => cleanDifference(value, second[index]!));
}

function cleanDifference(first: number, second: number): number {
  const difference = first - second;
  const size = Math.max(Math.abs(first), Math.abs(second));
  if (size === 0 || difference === 0) return 0;
  const decimals = 11 - Math.floor(Math.log10(size));
  if (decimals < 0 || decimals > 100) return difference;
  // Adding 0 turns a rounded -0 into 0.
  return Number(difference.toFixed(decimals)) + 0;
}
