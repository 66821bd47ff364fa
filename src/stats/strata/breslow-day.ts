import { chiSquareUpper } from "../../numeric/chi-square.js";
import { mantelHaenszel } from "./mantel-haenszel.js";
import { informativeStrata, requireStrata, type Stratum, type StratumCells } from "./strata.js";

interface HomogeneityInput {
  readonly method: "Breslow-Day at the Mantel-Haenszel odds ratio";
  readonly strata: readonly Stratum[];
  /** The Mantel-Haenszel odds ratio, common to all strata under the hypothesis. */
  readonly oddsRatio: number | null;
}

export interface BreslowDayResult extends HomogeneityInput {
  /** Strata with both groups and both outcomes, less one. */
  readonly df: number;
  readonly statistic: number;
  readonly p: number;
  /** With Tarone's correction, which makes the chi-square distribution right in large samples. */
  readonly tarone: { readonly statistic: number; readonly p: number };
}

export interface NoBreslowDay extends HomogeneityInput {
  readonly statistic: null;
  readonly p: null;
  readonly because: string;
}

/**
 * Large-sample test that the odds ratio is the same in every stratum, with and without Tarone's correction. Strata with
 * an empty margin say nothing and are left out.
 *
 * @param strata successes of trials in two groups for each stratum; a group may be empty (0 of 0)
 * @throws RangeError when a count is out of range
 * @see Breslow and Day 1980, Statistical Methods in Cancer Research I, IARC, section 4.4; Tarone 1985, Biometrika 72:91-95
 * @example breslowDay([{ first: { successes: 10, trials: 11 }, second: { successes: 2, trials: 4 } }, { first: { successes: 2, trials: 5 }, second: { successes: 4, trials: 6 } }]).df // => 1
 */
export function breslowDay(strata: readonly Stratum[]): BreslowDayResult | NoBreslowDay {
  requireStrata("breslowDay", strata);
  const cells = informativeStrata(strata);
  const { oddsRatio } = mantelHaenszel(strata);
  const input = { method: "Breslow-Day at the Mantel-Haenszel odds ratio", strata, oddsRatio } as const;
  const none = (because: string): NoBreslowDay => ({ ...input, statistic: null, p: null, because });
  if (cells.length < 2)
    return none(`homogeneity needs two strata with both groups and both outcomes, there is ${cells.length}`);
  if (oddsRatio === null || oddsRatio === 0 || oddsRatio === Infinity)
    return none(
      `the Mantel-Haenszel odds ratio is ${oddsRatio === 0 ? "0" : "infinite"}, so no stratum can be fitted to it`,
    );

  let [statistic, excess, variance] = [0, 0, 0];
  for (const cell of cells) {
    const fitted = fittedCells(cell, oddsRatio);
    const gap = cell.a - fitted[0]!;
    const precision = fitted.reduce((sum, count) => sum + 1 / count, 0);
    statistic += gap ** 2 * precision;
    excess += gap;
    variance += 1 / precision;
  }
  const df = cells.length - 1;
  const corrected = Math.max(0, statistic - excess ** 2 / variance);
  const tarone = { statistic: corrected, p: chiSquareUpper(corrected, df) };
  return { ...input, df, statistic, p: chiSquareUpper(statistic, df), tarone };
}

/** The cells a, b, c, d with the stratum's margins and the given odds ratio; each by its own quadratic, so none cancels. */
function fittedCells({ n1, n2, m1, m0 }: StratumCells, oddsRatio: number): number[] {
  return [
    fittedCell(n1, m1, n2, oddsRatio),
    fittedCell(n1, m0, n2, 1 / oddsRatio),
    fittedCell(n2, m1, n1, 1 / oddsRatio),
    fittedCell(n2, m0, n1, oddsRatio),
  ];
}

/** The x that satisfies x (other - column + x) = oddsRatio (row - x) (column - x). */
function fittedCell(row: number, column: number, other: number, oddsRatio: number): number {
  const linear = oddsRatio * (row + column) + other - column;
  const constant = oddsRatio * row * column;
  const root = Math.sqrt(Math.max(0, linear ** 2 - 4 * (oddsRatio - 1) * constant));
  return linear >= 0 ? (2 * constant) / (linear + root) : (linear - root) / (2 * (oddsRatio - 1));
}
