/** What a planned study is expected to find. */
export interface AgreementModel {
  /** Share of each grade, adding to 1. */
  readonly shares: readonly number[];
  /** Kappa of any two raters, at least 0 and below 1. */
  readonly kappa: number;
  readonly raters: number;
}

/**
 * Checks a model: each rater gives the true grade with probability sqrt(kappa), else a grade by the shares alone, so that
 * every pair of raters has this kappa whatever the weights.
 * @throws RangeError when shares, kappa or raters are out of range
 */
export function requireModel(caller: string, { shares, kappa, raters }: AgreementModel): void {
  const sum = shares.reduce((total, share) => total + share, 0);
  if (shares.length < 2 || !shares.every((share) => share > 0) || Math.abs(sum - 1) > 1e-9)
    throw new RangeError(
      `${caller}: shares must be at least two numbers above 0 that add to 1, got ${shares.join(", ")}`,
    );
  if (!(kappa >= 0 && kappa < 1)) throw new RangeError(`${caller}: kappa must be at least 0 and below 1, got ${kappa}`);
  if (!(Number.isInteger(raters) && raters >= 2 && raters <= 8))
    throw new RangeError(`${caller}: raters must be an integer from 2 to 8, got ${raters}`);
}

/** Throws unless the wanted full width of an interval lies between 0 and 1. */
export function requireWidth(caller: string, width: number): void {
  if (!(width > 0 && width < 1)) throw new RangeError(`${caller}: width must lie between 0 and 1, got ${width}`);
}
