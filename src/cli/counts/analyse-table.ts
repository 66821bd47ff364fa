import { InputError } from "../input-error.js";
import { fisherFreemanHalton, type FreemanHaltonOptions } from "../../stats/tables/fisher-freeman-halton.js";
import { tableChiSquare } from "../../stats/tables/table-chi-square.js";
import { cochranArmitage } from "../../stats/trend/cochran-armitage.js";
import { exactTrend } from "../../stats/trend/exact-trend.js";

/** What `denominator table` prints. */
export function analyseTable(table: readonly (readonly number[])[], options: FreemanHaltonOptions) {
  if (table.every((row) => row.every((count) => count === 0)))
    throw new InputError("table: there must be at least one case, got 0 in every cell");
  const { table: _rows, ...freemanHalton } = fisherFreemanHalton(table, options);
  const { table: _same, ...chiSquare } = tableChiSquare(table);
  return {
    table,
    fisherFreemanHalton: freemanHalton,
    chiSquare,
    ...(table[0]!.length === 2 && { trend: trendOf(table) }),
  };
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
