import { InputError } from "../input-error.js";
import { fisherFreemanHalton, type FreemanHaltonOptions } from "../../stats/tables/fisher-freeman-halton.js";
import { tableChiSquare } from "../../stats/tables/table-chi-square.js";
import { cochranArmitage } from "../../stats/trend/cochran-armitage.js";
import { exactTrend } from "../../stats/trend/exact-trend.js";

/** Steps of the exact test that a person at a terminal waits for: some seconds. */
const LONG_WORK = 2e8;

/**
 * What `denominator table` prints.
 * @param onWait called before an exact test that takes some seconds
 */
export function analyseTable(
  table: readonly (readonly number[])[],
  options: Omit<FreemanHaltonOptions, "workLimit">,
  onWait: () => void = () => {},
) {
  if (table.every((row) => row.every((count) => count === 0)))
    throw new InputError("table: there must be at least one case, got 0 in every cell");
  const { table: _rows, ...freemanHalton } = exactIfAtAll(table, options, onWait);
  const { table: _same, ...chiSquare } = tableChiSquare(table);
  return {
    table,
    fisherFreemanHalton: freemanHalton,
    chiSquare,
    ...(table[0]!.length === 2 && { trend: trendOf(table) }),
  };
}

/** The exact test when it is quick or can be waited for, else random tables. */
function exactIfAtAll(
  table: readonly (readonly number[])[],
  options: Omit<FreemanHaltonOptions, "workLimit">,
  onWait: () => void,
) {
  const quick = fisherFreemanHalton(table, options);
  if (quick.method !== "Monte Carlo Fisher-Freeman-Halton") return quick;
  onWait();
  return fisherFreemanHalton(table, { ...options, workLimit: LONG_WORK });
}

export type TableAnalysis = ReturnType<typeof analyseTable>;

/** Whether the first column's share rises with the row number. */
function trendOf(table: readonly (readonly number[])[]) {
  if (table.length < 2) {
    const because = "a trend needs at least two rows";
    return { exact: { pointProbability: null, doubled: null, because }, asymptotic: { z: null, p: null, because } };
  }
  const groups = table.map(([first, second]) => ({ successes: first!, trials: first! + second! }));
  const { groups: _counts, scores, ...exact } = exactTrend(groups);
  const { groups: _again, scores: _scores, ...asymptotic } = cochranArmitage(groups);
  return { scores, exact, asymptotic };
}
