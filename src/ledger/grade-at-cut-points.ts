/** The grade of a measurement: a value above a cut-point belongs to the next grade, one equal to it to the grade below. */
export function gradeAtCutPoints(
  measurement: number,
  cutPoints: readonly number[],
  grades: readonly string[],
): string | undefined {
  return grades[cutPoints.filter((cut) => measurement > cut).length];
}
