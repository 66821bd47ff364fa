/** A count that a printed percentage fits. */
export interface FittingCount {
  readonly successes: number;
  readonly cases: number;
}

/**
 * Every count of up to `most` cases whose percentage prints as given, halves rounded either way.
 * @param percent as printed, without its sign, e.g. "84" or "83.8"
 * @throws RangeError when it is no percentage between 0 and 100
 */
export function countsForPercent(percent: string, most: number): FittingCount[] {
  const printed = /^\d{1,3}(?:[.,](\d+))?$/.exec(percent.trim());
  const value = Number(percent.trim().replace(",", "."));
  if (printed === null || value > 100)
    throw new RangeError(`countsForPercent: percent must be a number from 0 to 100, got ${percent}`);
  const scale = 10 ** (printed[1]?.length ?? 0);
  const found: FittingCount[] = [];
  for (let cases = 1; cases <= most; cases++) {
    // In whole numbers: |100 * successes * scale - value * scale * cases| at most half of cases.
    const middle = Math.round(value * scale) * cases;
    for (let successes = Math.floor((middle - cases / 2) / (100 * scale)); successes <= cases; successes++) {
      const distance = 2 * Math.abs(100 * scale * successes - middle);
      if (successes >= 0 && distance <= cases) found.push({ successes, cases });
      else if (100 * scale * successes > middle) break;
    }
  }
  return found;
}
