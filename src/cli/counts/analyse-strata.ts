import { InputError } from "../input-error.js";
import { breslowDay } from "../../stats/strata/breslow-day.js";
import { exactCommonOddsRatio } from "../../stats/strata/exact-common-odds-ratio.js";
import { exactHomogeneity } from "../../stats/strata/exact-homogeneity.js";
import { mantelHaenszel } from "../../stats/strata/mantel-haenszel.js";
import type { Stratum } from "../../stats/strata/strata.js";

/** What `denominator strata` prints, from success and failure of the first group, then of the second, a row a stratum. */
export function analyseStrata(rows: readonly (readonly number[])[], level: number) {
  if (rows.every((row) => row.every((count) => count === 0)))
    throw new InputError("strata: there must be at least one case, got 0 in every cell");
  const strata: Stratum[] = rows.map(([a, b, c, d]) => ({
    first: { successes: a!, trials: a! + b! },
    second: { successes: c!, trials: c! + d! },
  }));
  const { strata: _all, level: _level, ...adjusted } = mantelHaenszel(strata, { level });
  const { strata: _same, level: _again, ...exactCommon } = exactCommonOddsRatio(strata, { level });
  return { strata, level, mantelHaenszel: adjusted, exactCommon, homogeneity: homogeneityOf(strata) };
}

export type StrataAnalysis = ReturnType<typeof analyseStrata>;

function homogeneityOf(strata: readonly Stratum[]) {
  const test = breslowDay(strata);
  const { strata: _all, ...exact } = exactHomogeneity(strata);
  if (test.p === null) return { breslowDay: null, tarone: null, because: test.because, exact };
  const { statistic, df, p, tarone } = test;
  return { breslowDay: p, tarone: tarone.p, df, statistic, taroneStatistic: tarone.statistic, exact };
}
