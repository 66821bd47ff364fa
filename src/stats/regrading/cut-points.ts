/** Throws unless there is at least one finite cut-point and they rise. */
export function requireCuts(caller: string, cuts: readonly number[]): void {
  const rising = cuts.every((cut, k) => Number.isFinite(cut) && (k === 0 || cut > cuts[k - 1]!));
  if (cuts.length === 0 || !rising)
    throw new RangeError(`${caller}: cuts must be at least one finite number, rising, got ${cuts.join(", ")}`);
}

/** Throws unless every value is finite. */
export function requireValues(caller: string, values: readonly number[]): void {
  const wrong = values.findIndex((value) => !Number.isFinite(value));
  if (values.length === 0) throw new RangeError(`${caller}: there must be at least one measurement, got none`);
  if (wrong >= 0)
    throw new RangeError(`${caller}: measurement ${wrong + 1} must be a finite number, got ${values[wrong]!}`);
}

/** Place of the grade of a measurement, 0 first: a value above a cut-point is in the next grade, one equal to it below. */
export function gradePlace(value: number, cuts: readonly number[]): number {
  return cuts.filter((cut) => value > cut).length;
}
