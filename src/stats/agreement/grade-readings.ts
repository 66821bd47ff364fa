/** Grades as places in the scale (0 first): one row a radiograph, one column a rater, null where not read. */
export interface GradeReadings {
  /** Number of grades in the scale, used or not. */
  readonly grades: number;
  readonly readings: readonly (readonly (number | null)[])[];
}

/**
 * Checks readings before any arithmetic and returns the number of raters.
 * @throws RangeError when rows differ in length, there are fewer than two raters, no radiograph, or a grade lies outside the scale
 */
export function requireGradeReadings(caller: string, { grades, readings }: GradeReadings): number {
  if (!(Number.isInteger(grades) && grades >= 1))
    throw new RangeError(`${caller}: grades must be an integer of at least 1, got ${grades}`);
  const raters = requireReadings(caller, readings);
  readings.forEach((row, image) => {
    for (const grade of row)
      if (grade !== null && !(Number.isInteger(grade) && grade >= 0 && grade < grades))
        throw new RangeError(`${caller}: grade of radiograph ${image + 1} must be 0 to ${grades - 1}, got ${grade}`);
  });
  return raters;
}

/**
 * Checks a matrix of values (null where not read) and returns the number of raters.
 * @throws RangeError when there is no radiograph, fewer than two raters, rows of unequal length, or a value that is not finite
 */
export function requireReadings(caller: string, readings: readonly (readonly (number | null)[])[]): number {
  if (readings.length === 0) throw new RangeError(`${caller}: there must be at least one radiograph, got none`);
  const raters = readings[0]!.length;
  if (raters < 2) throw new RangeError(`${caller}: there must be at least two raters, got ${raters}`);
  readings.forEach((row, image) => {
    if (row.length !== raters)
      throw new RangeError(
        `${caller}: every radiograph must have ${raters} places for readings, number ${image + 1} has ${row.length}`,
      );
    for (const value of row)
      if (value !== null && !Number.isFinite(value))
        throw new RangeError(`${caller}: reading of radiograph ${image + 1} must be a finite number, got ${value}`);
  });
  return raters;
}
