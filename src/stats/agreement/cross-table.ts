/** One rater's grade for each radiograph as a place in the list of grades (0 first); null where it was not read. */
export type GradeColumn = readonly (number | null)[];

/** A square table of counts and the radiographs behind each cell. */
export interface CrossTable {
  readonly method: "cross-table";
  readonly grades: number;
  /** Radiographs that both raters graded. */
  readonly n: number;
  /** Radiographs left out because one or both gave no grade. */
  readonly incomplete: number;
  /** Rows: first rater. Columns: second rater. */
  readonly table: readonly (readonly number[])[];
  /** Places (0 first) of the radiographs in each cell. */
  readonly members: readonly (readonly (readonly number[])[])[];
}

/**
 * Cross-table of two raters' grades, radiographs paired by their place.
 *
 * @param first grades by the first rater, each 0 to `grades` - 1 or null
 * @param second the same radiographs by the second rater
 * @param options.grades number of grades in the scale, used or not
 * @throws RangeError when the columns differ in length or a grade lies outside the scale
 * @example crossTable([0, 1, 1, null], [0, 1, 0, 1], { grades: 2 }).table // => [[1, 0], [1, 1]]
 */
export function crossTable(first: GradeColumn, second: GradeColumn, options: { readonly grades: number }): CrossTable {
  const { grades } = options;
  if (!(Number.isInteger(grades) && grades >= 1))
    throw new RangeError(`crossTable: grades must be an integer of at least 1, got ${grades}`);
  if (first.length !== second.length)
    throw new RangeError(
      `crossTable: both raters must have the same radiographs, got ${first.length} and ${second.length}`,
    );
  const members = Array.from({ length: grades }, () => Array.from({ length: grades }, (): number[] => []));
  let n = 0;
  first.forEach((a, image) => {
    const b = second[image]!;
    for (const grade of [a, b])
      if (grade !== null && !(Number.isInteger(grade) && grade >= 0 && grade < grades))
        throw new RangeError(`crossTable: grade of radiograph ${image + 1} must be 0 to ${grades - 1}, got ${grade}`);
    if (a === null || b === null) return;
    members[a]![b]!.push(image);
    n++;
  });
  const table = members.map((row) => row.map((cell) => cell.length));
  return { method: "cross-table", grades, n, incomplete: first.length - n, table, members };
}
