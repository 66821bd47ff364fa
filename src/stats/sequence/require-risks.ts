/** Throws unless every risk lies strictly between 0 and 1. */
export function requireRisks(caller: string, risks: readonly number[]): void {
  const wrong = risks.findIndex((risk) => !(risk > 0 && risk < 1));
  if (wrong >= 0)
    throw new RangeError(`${caller}: risk of case ${wrong + 1} must lie between 0 and 1, got ${risks[wrong]}`);
}

/** Throws unless the odds ratio is positive, finite and not 1, which would tell no two states apart. */
export function requireOddsRatio(caller: string, oddsRatio: number): void {
  if (!(oddsRatio > 0 && oddsRatio < Infinity && oddsRatio !== 1))
    throw new RangeError(`${caller}: oddsRatio must be positive, finite and not 1, got ${oddsRatio}`);
}

/** Throws unless the limit is positive. */
export function requireLimit(caller: string, limit: number): void {
  if (!(limit > 0)) throw new RangeError(`${caller}: limit must be positive, got ${limit}`);
}
