import { fisherTails } from "./fisher-tails.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";

/** Fisher's exact p values of one table, two-sided by three conventions and one-sided both ways. */
export interface FisherExactResult extends TwoGroups {
  readonly method: "fisherExact";
  /** Two-sided: all tables no likelier than the observed one (relative tolerance 1e-7). The default convention. */
  readonly pointProbability: number;
  /** Natural logarithm of `pointProbability`, for tables so extreme that it underflows to 0. */
  readonly logPointProbability: number;
  /** Two-sided: twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** Two-sided: `pointProbability` less half the probability of the observed table. */
  readonly midP: number;
  /** One-sided: as few successes in the first group, or fewer. */
  readonly less: number;
  /** One-sided: as many successes in the first group, or more. */
  readonly greater: number;
}

/**
 * Fisher's exact test of two independent proportions, both margins fixed, by every convention in use.
 * @param groups successes of trials in each group
 * @throws RangeError when a count is out of range
 * @see Fisher 1935, The Design of Experiments, chapter 2; Irwin 1935, Metron 12:83-94 (summing unlikely tables);
 *   Lydersen, Fagerland, Laake 2009, Stat Med 28:1159-1175 (mid-P)
 * @example fisherExact({ first: { successes: 21, trials: 23 }, second: { successes: 15, trials: 18 } }).pointProbability // => 0.6384
 */
export function fisherExact({ first, second }: TwoGroups): FisherExactResult {
  requireTwoGroups("fisherExact", { first, second });
  const { successes: a, trials: m } = first;
  const { successes: c, trials: n } = second;
  const { observed, pointProbability, logPointProbability, less, greater } = fisherTails(a, m - a, c, n - c);
  return {
    method: "fisherExact",
    first,
    second,
    pointProbability,
    logPointProbability,
    doubled: Math.min(1, 2 * Math.min(less, greater)),
    midP: pointProbability - observed / 2,
    less,
    greater,
  };
}
