import { bracketedRoot } from "../../numeric/bracketed-root.js";
import {
  commonOddsDistribution,
  convolutionCost,
  viewAt,
  type CommonOddsDistribution,
  type CommonOddsView,
} from "./common-odds-distribution.js";
import { requireLevel, requireOptions } from "../guards.js";
import { informativeStrata, requireStrata, type Limits, type Stratum, type StratumCells } from "./strata.js";
import type { Interval } from "../types.js";

interface ExactCommonOddsRatio {
  readonly method: "exact conditional common odds ratio";
  readonly strata: readonly Stratum[];
  readonly level: number;
}

export interface ExactCommonOddsRatioResult extends ExactCommonOddsRatio {
  /** Conditional maximum likelihood estimate, Infinity or 0 when every stratum is at its end. */
  readonly oddsRatio: number;
  /** Limits at which each exact tail is half of 1 - level; 0 and Infinity where the data set none. */
  readonly interval: Interval;
  /** Two-sided: the sums that are no likelier than the observed one (relative tolerance 1e-7). */
  readonly p: number;
  /** Two-sided: twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** One-sided: the common odds ratio is below 1. */
  readonly less: number;
  /** One-sided: the common odds ratio is above 1. */
  readonly greater: number;
}

/** No stratum has both groups and both outcomes, so that every odds ratio fits equally well; or too many cases. */
export interface NoCommonOddsRatio extends ExactCommonOddsRatio {
  readonly oddsRatio: null;
  readonly interval: Limits;
  readonly p: 1 | null;
  readonly because: string;
}

/** Share of the largest weight below which one changes no limit. */
const NEGLIGIBLE = 1e-120;

/** Multiplications that take about half a second, for some five convolutions. */
const COST_LIMIT = 1e8;

/**
 * Exact inference for an odds ratio that is the same in every stratum, given all margins: the distribution of the
 * first group's successes is a convolution of noncentral hypergeometric distributions.
 *
 * @param strata successes of trials in two groups for each stratum; a group may be empty (0 of 0)
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Gart 1970, Biometrika 57:471-475; Mehta, Patel and Gray 1985, JASA 80:969-973
 * @example exactCommonOddsRatio([{ first: { successes: 3, trials: 4 }, second: { successes: 1, trials: 4 } }]).p // => 0.4857142857
 */
export function exactCommonOddsRatio(
  strata: readonly Stratum[],
  options: { readonly level?: number } = {},
): ExactCommonOddsRatioResult | NoCommonOddsRatio {
  requireOptions("exactCommonOddsRatio", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("exactCommonOddsRatio", level);
  requireStrata("exactCommonOddsRatio", strata);

  const input = { method: "exact conditional common odds ratio", strata, level } as const;
  const cells = informativeStrata(strata);
  if (cells.length === 0)
    return {
      ...input,
      oddsRatio: null,
      interval: { low: 0, high: Infinity },
      p: 1,
      because: "no stratum has both groups and both outcomes, so the odds ratio is undefined",
    };
  if (convolutionCost(cells) > COST_LIMIT) {
    const because = "the strata hold too many cases for the exact computation; use the Mantel-Haenszel odds ratio";
    return { ...input, oddsRatio: null, interval: { low: null, high: null, because }, p: null, because };
  }
  return { ...input, ...estimateAndLimits(cells, (1 - level) / 2), ...probabilities(cells) };
}

const observedSum = (cells: readonly StratumCells[]): number => cells.reduce((sum, { a }) => sum + a, 0);

function estimateAndLimits(
  cells: readonly StratumCells[],
  tail: number,
): { readonly oddsRatio: number; readonly interval: Interval } {
  const observed = observedSum(cells);
  const lowest = cells.reduce((sum, { m1, n2 }) => sum + Math.max(0, m1 - n2), 0);
  const highest = cells.reduce((sum, { n1, m1 }) => sum + Math.min(n1, m1), 0);
  const solve = (f: (view: CommonOddsView) => number): number => Math.exp(solveLogOdds(cells, observed, f));
  const estimate = (): number => solve(({ mean }) => mean - observed);
  return {
    oddsRatio: observed === lowest ? 0 : observed === highest ? Infinity : estimate(),
    interval: {
      low: observed === lowest ? 0 : solve(({ atLeast }) => Math.log(atLeast / tail)),
      high: observed === highest ? Infinity : solve(({ atMost }) => Math.log(tail / atMost)),
    },
  };
}

/**
 * Log odds ratio at which an increasing function of the distribution is 0. The distribution is convolved once and
 * tilted near by; where the root lies far off, it is convolved again there, so that no weight is lost to underflow.
 */
function solveLogOdds(cells: readonly StratumCells[], observed: number, f: (view: CommonOddsView) => number): number {
  let distribution = commonOddsDistribution(cells, startingLogOdds(cells), NEGLIGIBLE);
  for (;;) {
    const { theta } = distribution;
    const here = f(viewAt(distribution, theta, observed));
    if (here === 0) return theta;
    const reach = reachOf(distribution, observed);
    const value = (at: number): number => f(viewAt(distribution, at, observed));
    const far = here > 0 ? theta - reach : theta + reach;
    if (value(far) > 0 !== here > 0)
      return bracketedRoot(value, { low: Math.min(theta, far), high: Math.max(theta, far) });
    distribution = commonOddsDistribution(cells, far, NEGLIGIBLE);
  }
}

/** How far a tilt may go: a few standard deviations of the log odds ratio, at most 3. */
function reachOf(distribution: CommonOddsDistribution, observed: number): number {
  const { variance } = viewAt(distribution, distribution.theta, observed);
  return Math.min(3, 8 / Math.sqrt(Math.max(variance, 1e-3)));
}

/** The Mantel-Haenszel log odds ratio, half a case added above and below so that it is finite. */
function startingLogOdds(cells: readonly StratumCells[]): number {
  const above = cells.reduce((sum, { a, d, total }) => sum + (a * d) / total, 0.5);
  const below = cells.reduce((sum, { b, c, total }) => sum + (b * c) / total, 0.5);
  return Math.log(above / below);
}

function probabilities(
  cells: readonly StratumCells[],
): Pick<ExactCommonOddsRatioResult, "p" | "doubled" | "less" | "greater"> {
  const observed = observedSum(cells);
  const distribution = commonOddsDistribution(cells, 0);
  const { atMost, atLeast } = viewAt(distribution, 0, observed);
  // Beyond what a double holds, the observed weight is 0, and p with it.
  const own = distribution.logWeights[observed - distribution.low] ?? -Infinity;
  let [all, noLikelier] = [0, 0];
  for (const logWeight of distribution.logWeights) {
    const weight = Math.exp(logWeight);
    all += weight;
    if (logWeight <= own + 1e-7) noLikelier += weight;
  }
  return {
    p: Math.min(1, noLikelier / all),
    doubled: Math.min(1, 2 * Math.min(atMost, atLeast)),
    less: Math.min(1, atMost),
    greater: Math.min(1, atLeast),
  };
}
