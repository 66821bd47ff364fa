import type { CaseTable } from "./types.js";

/** How often the whole numbers of a column end in each digit; rounded readings pile up on 0 and 5. */
export interface LastDigits {
  readonly column: string;
  readonly n: number;
  /** Counts of the last digits 0 to 9. */
  readonly counts: readonly number[];
  /** Share of numbers that end in 0 or 5; two tenths are expected of unrounded readings. */
  readonly roundShare: number;
}

const fewest = 20;

/** Last digits of every column of whole numbers with at least 20 values over 10; shares are fractions. */
export function lastDigits(table: CaseTable): LastDigits[] {
  return table.columns.flatMap(({ name, role }, k): LastDigits[] => {
    if (!["measurement", "rater", "other"].includes(role)) return [];
    const numbers = table.cases.flatMap(({ values }) => {
      const value = values[k]!;
      return value.kind === "number" && Number.isInteger(value.number) && Math.abs(value.number) >= 10
        ? [Math.abs(value.number)]
        : [];
    });
    if (numbers.length < fewest) return [];
    const counts = Array.from({ length: 10 }, (_, digit) => numbers.filter((number) => number % 10 === digit).length);
    return [{ column: name, n: numbers.length, counts, roundShare: (counts[0]! + counts[5]!) / numbers.length }];
  });
}
