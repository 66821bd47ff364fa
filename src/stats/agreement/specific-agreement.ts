import { requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { wilson } from "../wilson.js";
import { tableMargins, type SquareTable } from "./square-table.js";

export interface GradeAgreement {
  /** Place of the grade, 0 first. */
  readonly grade: number;
  /** Radiographs that both raters gave this grade. */
  readonly both: number;
  /** Radiographs that exactly one of them did. */
  readonly one: number;
  readonly value: { readonly estimate: number; readonly interval: Interval } | NotEstimable;
}

export interface SpecificAgreement {
  readonly method: "specific agreement, Wilson interval given the radiographs with this grade";
  readonly level: number;
  readonly n: number;
  readonly grades: readonly GradeAgreement[];
}

/**
 * Agreement on each grade: when one rater gave it, how often did the other too?
 *
 * The estimate 2b/(2b + o) is a rising function of b/(b + o), of the b + o radiographs that got the grade from either
 * rater; Wilson's interval for that proportion is carried over.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @throws RangeError when the table or the level are out of range
 * @see Spitzer and Fleiss 1974, Br J Psychiatry 125:341-347, for the estimate; Dice 1945, Ecology 26:297-302
 * @example specificAgreement([[80, 10], [5, 5]]).grades[1].value.estimate // => 0.4
 */
export function specificAgreement(table: SquareTable, options: { readonly level?: number } = {}): SpecificAgreement {
  requireOptions("specificAgreement", options, ["level"]);
  const { level = 0.95 } = options;
  const { n, rows, columns } = tableMargins("specificAgreement", table);
  const grades = rows.map((count, grade) => {
    const both = table[grade]![grade]!;
    const one = count + columns[grade]! - 2 * both;
    return { grade, both, one, value: value(both, one, level) };
  });
  return {
    method: "specific agreement, Wilson interval given the radiographs with this grade",
    level,
    n,
    grades,
  };
}

function value(both: number, one: number, level: number): GradeAgreement["value"] {
  if (both + one === 0) return { estimate: null, because: "neither rater gave this grade" };
  const shared = (proportion: number): number => (2 * proportion) / (1 + proportion);
  const { interval } = wilson(both, both + one, { level });
  return {
    estimate: (2 * both) / (2 * both + one),
    interval: { low: shared(interval.low), high: shared(interval.high) },
  };
}
