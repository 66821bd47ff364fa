import type { ColumnPair } from "./pairs-coefficient.js";

/** Every two of a number of columns, the first before the second, in reading order. */
export function allPairs(columns: number): ColumnPair[] {
  return Array.from({ length: columns }, (_, first) =>
    Array.from({ length: columns - first - 1 }, (_unused, k): ColumnPair => [first, first + k + 1]),
  ).flat();
}
