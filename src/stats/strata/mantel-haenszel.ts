import { normalUpperQuantile, normalUpper } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import {
  requireStrata,
  stratumCells,
  type Limits,
  type NoInterval,
  type Stratum,
  type StratumCells,
} from "./strata.js";

export interface MantelHaenszelResult {
  readonly method: "Mantel-Haenszel";
  readonly strata: readonly Stratum[];
  readonly level: number;
  /** Odds of success in the first group over those in the second; Infinity when only its denominator is 0. */
  readonly oddsRatio: number | null;
  /** Robins-Breslow-Greenland limits of the odds ratio. */
  readonly interval: Limits;
  /** Share of successes in the first group less that in the second. */
  readonly difference: number | null;
  /** Sato 1989 limits of the difference, not cut to the possible range. */
  readonly differenceInterval: Limits;
  readonly riskRatio: number | null;
  /** Greenland-Robins limits of the risk ratio. */
  readonly riskRatioInterval: Limits;
  /** Cochran-Mantel-Haenszel statistic without continuity correction, 1 degree of freedom. */
  readonly chiSquare: number | null;
  readonly p: number | null;
  /** The same with a continuity correction of one half, so that a printed value can be recognised. */
  readonly corrected: { readonly chiSquare: number | null; readonly p: number | null };
  /** Why something above is null; absent when nothing is. */
  readonly because?: string;
}

/**
 * Mantel-Haenszel odds ratio, risk difference and risk ratio over strata, with the Cochran-Mantel-Haenszel test.
 *
 * @param strata successes of trials in two groups for each stratum; a group may be empty (0 of 0)
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when a count or the level is out of range
 * @see Mantel and Haenszel 1959, J Natl Cancer Inst 22:719-748; Robins, Breslow and Greenland 1986, Biometrics 42:311-323
 *   (odds ratio); Sato 1989, Biometrics 45:1323-1324 (difference); Greenland and Robins 1985, Biometrics 41:55-68 (risk ratio)
 * @example mantelHaenszel([{ first: { successes: 10, trials: 11 }, second: { successes: 2, trials: 4 } }]).oddsRatio // => 10
 */
export function mantelHaenszel(
  strata: readonly Stratum[],
  options: { readonly level?: number } = {},
): MantelHaenszelResult {
  requireOptions("mantelHaenszel", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("mantelHaenszel", level);
  requireStrata("mantelHaenszel", strata);

  const z = normalUpperQuantile((1 - level) / 2);
  const cells = strata.map(stratumCells).filter(({ total }) => total > 0);
  const odds = oddsRatio(cells, z);
  const difference = riskDifference(cells, z);
  const ratio = riskRatio(cells, z);
  const test = associationTest(cells);
  const reasons = [odds.because, difference.because, ratio.because, test.because].filter(
    (reason) => reason !== undefined,
  );
  return {
    method: "Mantel-Haenszel",
    strata,
    level,
    oddsRatio: odds.estimate,
    interval: odds.interval,
    difference: difference.estimate,
    differenceInterval: difference.interval,
    riskRatio: ratio.estimate,
    riskRatioInterval: ratio.interval,
    chiSquare: test.statistic,
    p: test.p,
    corrected: test.corrected,
    ...(reasons.length > 0 && { because: [...new Set(reasons)].join("; ") }),
  };
}

interface Estimate {
  readonly estimate: number | null;
  readonly interval: Limits;
  readonly because?: string;
}

const noInterval = (because: string): NoInterval => ({ low: null, high: null, because });
const undefinedBecause = (because: string): Estimate => ({ estimate: null, interval: noInterval(because), because });
const sumOver = (cells: readonly StratumCells[], term: (cell: StratumCells) => number): number =>
  cells.reduce((sum, cell) => sum + term(cell), 0);

function oddsRatio(cells: readonly StratumCells[], z: number): Estimate {
  const above = sumOver(cells, ({ a, d, total }) => (a * d) / total);
  const below = sumOver(cells, ({ b, c, total }) => (b * c) / total);
  if (above === 0 && below === 0)
    return undefinedBecause("no stratum has both groups and both outcomes, so the odds ratio is undefined");
  if (above === 0 || below === 0)
    return {
      estimate: above / below,
      interval: noInterval(`an odds ratio of ${above === 0 ? "0" : "infinity"} has no Robins-Breslow-Greenland limits`),
    };
  // Var(log OR) of Robins, Breslow and Greenland 1986; P + Q = 1 in each stratum.
  const variance =
    sumOver(cells, ({ a, d, total }) => (((a + d) / total) * a * d) / total) / (2 * above ** 2) +
    sumOver(cells, ({ a, b, c, d, total }) => ((a + d) * b * c + (b + c) * a * d) / total ** 2) / (2 * above * below) +
    sumOver(cells, ({ b, c, total }) => (((b + c) / total) * b * c) / total) / (2 * below ** 2);
  return ratioWithLimits(above / below, variance, z);
}

function ratioWithLimits(estimate: number, variance: number, z: number): Estimate {
  const half = z * Math.sqrt(variance);
  return { estimate, interval: { low: estimate * Math.exp(-half), high: estimate * Math.exp(half) } };
}

function riskDifference(cells: readonly StratumCells[], z: number): Estimate {
  const weight = sumOver(cells, ({ n1, n2, total }) => (n1 * n2) / total);
  if (weight === 0) return undefinedBecause("no stratum has cases in both groups");
  const estimate = sumOver(cells, ({ a, c, n1, n2, total }) => (a * n2 - c * n1) / total) / weight;
  // Sato 1989: variance = (difference * sum P + sum Q) / weight^2.
  const p = sumOver(
    cells,
    ({ a, c, n1, n2, total }) => (n1 ** 2 * c - n2 ** 2 * a + (n1 * n2 * (n2 - n1)) / 2) / total ** 2,
  );
  const q = sumOver(cells, ({ a, b, c, d, total }) => (a * d + c * b) / (2 * total));
  // Rounding may leave a negative trifle where the variance is 0.
  const half = (z * Math.sqrt(Math.max(0, estimate * p + q))) / weight;
  return { estimate, interval: { low: estimate - half, high: estimate + half } };
}

function riskRatio(cells: readonly StratumCells[], z: number): Estimate {
  const above = sumOver(cells, ({ a, n2, total }) => (a * n2) / total);
  const below = sumOver(cells, ({ c, n1, total }) => (c * n1) / total);
  if (above === 0 && below === 0)
    return undefinedBecause("no success in a stratum with cases in both groups, so the risk ratio is undefined");
  if (above === 0 || below === 0)
    return {
      estimate: above / below,
      interval: noInterval(`a risk ratio of ${above === 0 ? "0" : "infinity"} has no Greenland-Robins limits`),
    };
  const spread = sumOver(cells, ({ a, c, n1, n2, m1, total }) => (m1 * n1 * n2 - a * c * total) / total ** 2);
  return ratioWithLimits(above / below, Math.max(0, spread) / (above * below), z);
}

interface TestResult {
  readonly statistic: number | null;
  readonly p: number | null;
  readonly corrected: MantelHaenszelResult["corrected"];
  readonly because?: string;
}

function associationTest(cells: readonly StratumCells[]): TestResult {
  const several = cells.filter(({ total }) => total > 1);
  const variance = sumOver(
    several,
    ({ n1, n2, m1, m0, total }) => ((n1 / total) * (n2 / total) * m1 * m0) / (total - 1),
  );
  if (variance === 0)
    return {
      statistic: null,
      p: null,
      corrected: { chiSquare: null, p: null },
      because: "no stratum has both groups and both outcomes, so there is nothing to test",
    };
  const excess = Math.abs(sumOver(several, ({ a, n1, m1, total }) => a - (n1 * m1) / total));
  const z = excess / Math.sqrt(variance);
  // The correction never carries the excess past 0.
  const corrected = Math.max(0, excess - 0.5) / Math.sqrt(variance);
  return {
    statistic: z ** 2,
    p: 2 * normalUpper(z),
    corrected: { chiSquare: corrected ** 2, p: 2 * normalUpper(corrected) },
  };
}
