import { normalCdf, normalUpper } from "../../numeric/normal.js";

/** One-sided and two-sided p values of a test whose statistic grows with the first group. */
export interface RankTestP {
  /** Against the alternative that the first group (or the differences) tends to be smaller. */
  readonly less: number;
  /** Against the alternative that it tends to be larger. */
  readonly greater: number;
  /** Twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** Every outcome at least as far from the mean as the observed one. */
  readonly distance: number;
}

/** The large-sample version of a rank test, with the variance corrected for ties. */
export interface RankTestNormal {
  readonly z: number;
  readonly plain: RankTestP;
  /** With the continuity correction of one half. */
  readonly corrected: RankTestP;
}

/**
 * Normal approximation to a rank statistic.
 *
 * @param statistic the observed value, its mean and its variance under the null hypothesis (variance above 0)
 * @param options.step distance between neighbouring values of the statistic; the correction is half of it
 * @see Hollander and Wolfe 1973, sections 3.1 and 4.1
 * @example rankTestNormal({ observed: 40, mean: 22.5, variance: 71.25 }).plain.greater // => 0.0190758550867
 */
export function rankTestNormal(
  statistic: { readonly observed: number; readonly mean: number; readonly variance: number },
  options: { readonly step?: number } = {},
): RankTestNormal {
  const { observed, mean, variance } = statistic;
  const { step = 1 } = options;
  const sd = Math.sqrt(variance);
  const away = observed - mean;
  const half = step / 2;
  const closer = Math.sign(away) * Math.max(0, Math.abs(away) - half);
  return {
    z: away / sd,
    plain: tails(away / sd, away / sd, away / sd),
    corrected: tails((away + half) / sd, (away - half) / sd, closer / sd),
  };
}

function tails(zLess: number, zGreater: number, zBoth: number): RankTestP {
  const both = Math.min(1, 2 * normalCdf(-Math.abs(zBoth)));
  return { less: normalCdf(zLess), greater: normalUpper(zGreater), doubled: both, distance: both };
}
