import { chiSquareUpper } from "../../numeric/chi-square.js";
import { requireStrata, stratumCells, type Stratum } from "./strata.js";

export interface WoolfHomogeneityResult {
  readonly method: "Woolf homogeneity, half a case added to every cell";
  readonly strata: readonly Stratum[];
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
}

/**
 * Woolf's test that the odds ratio is the same in every stratum, as older papers and textbooks give it; half a case is
 * added to every cell. So that a printed value can be recognised: prefer `breslowDay`, or `exactHomogeneity`.
 *
 * @param strata at least two, successes of trials in two groups for each; a group may be empty (0 of 0)
 * @throws RangeError when a count is out of range or there are fewer than two strata
 * @see Woolf 1955, Ann Hum Genet 19:251-253; half a case: Haldane 1956, Ann Hum Genet 20:309-311
 * @example woolfHomogeneity([{ first: { successes: 3, trials: 4 }, second: { successes: 1, trials: 4 } }, { first: { successes: 1, trials: 4 }, second: { successes: 3, trials: 4 } }]).df // => 1
 */
export function woolfHomogeneity(strata: readonly Stratum[]): WoolfHomogeneityResult {
  requireStrata("woolfHomogeneity", strata);
  if (strata.length < 2)
    throw new RangeError(`woolfHomogeneity: there must be at least two strata, got ${strata.length}`);
  const terms = strata.map((stratum) => {
    const { a, b, c, d } = stratumCells(stratum);
    const cells = [a, b, c, d].map((count) => count + 0.5) as [number, number, number, number];
    return {
      logOdds: Math.log((cells[0] / cells[1]) * (cells[3] / cells[2])),
      weight: 1 / cells.reduce((sum, count) => sum + 1 / count, 0),
    };
  });
  const weight = terms.reduce((sum, term) => sum + term.weight, 0);
  const mean = terms.reduce((sum, term) => sum + (term.weight / weight) * term.logOdds, 0);
  const statistic = terms.reduce((sum, term) => sum + term.weight * (term.logOdds - mean) ** 2, 0);
  const df = strata.length - 1;
  const p = chiSquareUpper(statistic, df);
  return { method: "Woolf homogeneity, half a case added to every cell", strata, statistic, df, p };
}
