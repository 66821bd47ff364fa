import type { LedgerCase } from "../../ledger/types.js";
import { cutRoom, type CutRoom } from "../../stats/regrading/cut-room.js";
import { mantelHaenszel } from "../../stats/strata/mantel-haenszel.js";
import type { Count, NotEstimable } from "../../stats/types.js";
import type { CutMoves } from "./types.js";

/** A measured case with its outcome. */
export interface MeasuredOutcome {
  readonly value: number;
  readonly success: boolean;
  readonly technique: LedgerCase["firstTechnique"];
}

/**
 * How far each cut-point can move before success by grade turns the other way, and before closed against open, compared
 * within the grades, does. Directions only: whether chance explains them is not asked again at every cut.
 */
export function cutMoves(cases: readonly MeasuredOutcome[], cuts: readonly number[]): CutMoves {
  const moves = (some: readonly MeasuredOutcome[], conclude: (grades: readonly number[]) => string): CutRoom[] =>
    cuts.map((_, cut) =>
      cutRoom(
        some.map(({ value }) => value),
        { cuts, cut, conclude },
      ),
    );
  const compared = cases.filter(({ technique }) => technique === "closed" || technique === "open");
  return {
    trend: moves(cases, (grades) => trendDirection(cases, grades)),
    comparison: together(compared) ?? moves(compared, (grades) => comparisonDirection(compared, grades)),
  };
}

function together(compared: readonly MeasuredOutcome[]): NotEstimable | null {
  const used = new Set(compared.map(({ technique }) => technique));
  return used.size === 2 ? null : { estimate: null, because: "not both techniques were used in these cases" };
}

/** The sign of the slope of success on grade: of the Cochran-Armitage statistic and of the least-squares line alike. */
function trendDirection(cases: readonly MeasuredOutcome[], grades: readonly number[]): string {
  const mean = grades.reduce((sum, grade) => sum + grade, 0) / grades.length;
  const wins = cases.filter(({ success }) => success).length;
  const gradesWon = cases.reduce((sum, { success }, i) => sum + (success ? grades[i]! : 0), 0);
  return signOf(gradesWon - wins * mean, ["success falls with grade", "no trend", "success rises with grade"]);
}

function comparisonDirection(cases: readonly MeasuredOutcome[], grades: readonly number[]): string {
  const counts = (technique: "closed" | "open", grade: number): Count => {
    const here = cases.filter((one, i) => grades[i] === grade && one.technique === technique);
    return { successes: here.filter(({ success }) => success).length, trials: here.length };
  };
  const strata = [...new Set(grades)]
    .map((grade) => ({ first: counts("closed", grade), second: counts("open", grade) }))
    .filter(({ first, second }) => first.trials > 0 && second.trials > 0);
  if (strata.length === 0) return "in no grade were both techniques used";
  const { difference } = mantelHaenszel(strata);
  return signOf(difference ?? 0, ["open ahead", "neither ahead", "closed ahead"]);
}

/** Rounding leaves sums that are nothing a little off it. */
function signOf(value: number, [less, none, more]: readonly [string, string, string]): string {
  return Math.abs(value) < 1e-9 ? none : value < 0 ? less : more;
}
