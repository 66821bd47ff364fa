import { tableMargins, type SquareTable } from "./square-table.js";

export interface GradePrevalenceBias {
  /** Place of the grade, 0 first. */
  readonly grade: number;
  /** Share of all readings with this grade. */
  readonly prevalence: number;
  /** (Both gave it less neither gave it) over n, -1 to 1; far from 0, kappa is low however good the agreement. */
  readonly prevalenceIndex: number;
  /** (First rater's count less the second's) over n, -1 to 1. */
  readonly biasIndex: number;
}

export interface PrevalenceBias {
  readonly method: "prevalence and bias index, each grade against the rest";
  readonly n: number;
  readonly grades: readonly GradePrevalenceBias[];
}

/**
 * How common each grade is and how differently the two raters use it: what kappa depends on besides agreement.
 *
 * Signed; Byrt's indices are the absolute values. With two grades the indices of both are equal but for the sign.
 *
 * @param table counts, rows the first rater's grades, columns the second's
 * @throws RangeError when the table is not a square of counts
 * @see Byrt, Bishop and Carlin 1993, J Clin Epidemiol 46:423-429
 * @example prevalenceBias([[80, 10], [5, 5]]).grades[0].prevalenceIndex // => 0.75
 */
export function prevalenceBias(table: SquareTable): PrevalenceBias {
  const { n, rows, columns } = tableMargins("prevalenceBias", table);
  const grades = rows.map((count, grade) => {
    const both = table[grade]![grade]!;
    const neither = n - count - columns[grade]! + both;
    return {
      grade,
      prevalence: (count + columns[grade]!) / (2 * n),
      prevalenceIndex: (both - neither) / n,
      biasIndex: (count - columns[grade]!) / n,
    };
  });
  return { method: "prevalence and bias index, each grade against the rest", n, grades };
}
