import { requireLevel, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { allPairs } from "./all-pairs.js";
import { agreementWithin, type AgreementWithin } from "./agreement-within.js";
import { cohenKappa, type KappaResult } from "./cohen-kappa.js";
import { crossTable, type CrossTable } from "./cross-table.js";
import { namedWeights, type NamedWeights } from "./disagreement-weights.js";
import { requireGradeReadings, type GradeReadings } from "./grade-readings.js";
import type { ColumnPair } from "./pairs-coefficient.js";

export interface RaterPair {
  /** Places of the two raters. */
  readonly raters: ColumnPair;
  readonly crossTable: CrossTable;
  readonly agreement: AgreementWithin | NotEstimable;
  readonly withinOne: AgreementWithin | NotEstimable;
  readonly kappa: Readonly<Record<NamedWeights, KappaResult | NotEstimable>>;
}

export interface RaterPairs {
  readonly method: "every pair of raters on the radiographs that both graded";
  readonly level: number;
  readonly pairs: readonly RaterPair[];
}

/**
 * Agreement and kappa of each pair of raters, each pair on all radiographs that both of them graded.
 *
 * @param given grades as places in the scale, one row a radiograph, one column a rater
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when readings or level are out of range; TypeError for unknown options
 * @example raterPairs({ grades: 2, readings: [[0, 0, null], [0, 1, 1], [1, 1, 1]] }).pairs[2].crossTable.n // => 2
 */
export function raterPairs(given: GradeReadings, options: { readonly level?: number } = {}): RaterPairs {
  requireOptions("raterPairs", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("raterPairs", level);
  const raters = requireGradeReadings("raterPairs", given);
  const pairs = allPairs(raters).map((pair) => onePair(given, pair, level));
  return { method: "every pair of raters on the radiographs that both graded", level, pairs };
}

function onePair({ grades, readings }: GradeReadings, [first, second]: ColumnPair, level: number): RaterPair {
  const column = (rater: number) => readings.map((row) => row[rater]!);
  const cross = crossTable(column(first), column(second), { grades });
  const none: NotEstimable = { estimate: null, because: "no radiograph was graded by both" };
  const given = <Result>(result: () => Result): Result | NotEstimable => (cross.n === 0 ? none : result());
  return {
    raters: [first, second],
    crossTable: cross,
    agreement: given(() => agreementWithin(cross.table, { level })),
    withinOne: given(() => agreementWithin(cross.table, { distance: 1, level })),
    kappa: Object.fromEntries(
      namedWeights.map((weights) => [weights, given(() => cohenKappa(cross.table, { weights, level }))]),
    ) as Record<NamedWeights, KappaResult | NotEstimable>,
  };
}
