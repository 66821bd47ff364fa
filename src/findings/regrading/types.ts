import type { Interval, NotEstimable } from "../../stats/types.js";
import type { ChangedCount } from "../../stats/regrading/regrading-chances.js";
import type { CutRoom } from "../../stats/regrading/cut-room.js";
import type { GradeRate } from "../types.js";

/** Spread of one reading about the true value, with where it comes from. */
export interface ObserversError {
  readonly source: "readings" | "plan";
  readonly method: string;
  readonly estimate: number;
  /** null where the error was stated. */
  readonly interval: Interval | null;
  /** Columns of readings, their observers, and the radiographs that the estimate stands on; none where it was stated. */
  readonly columns: readonly string[];
  readonly observers: number;
  readonly radiographs: readonly string[];
  /** The plan states the error and names readings too: what these give, for comparison. */
  readonly fromReadings: number | null;
}

/** One analysed case with its measurement and what the observers' error leaves open. */
export interface RegradedCase {
  readonly id: string;
  readonly value: number;
  /** The grade that the measurement gives, and the one recorded; null where none was. */
  readonly measuredGrade: string;
  readonly recordedGrade: string | null;
  /** Distance to the nearest cut-point. */
  readonly distance: number;
  /** Chance that the true value lies in another grade, and that another reading does. */
  readonly otherTrueGrade: number;
  readonly otherReadGrade: number;
}

/** What one grading after another, drawn within the error, makes of one grade. */
export interface SimulatedGrade {
  readonly grade: string;
  readonly casesRange: Interval;
  readonly success: { readonly estimate: number; readonly range: Interval } | NotEstimable;
}

export interface RegradingChancesFound {
  readonly cases: readonly RegradedCase[];
  /** Within 1.96 errors of a cut-point, nearest first. */
  readonly near: readonly string[];
  /** How many grades differ from those of the true values, and from those of another reading. */
  readonly trueGrades: ChangedCount;
  readonly readGrades: ChangedCount;
  /** How many treatments another reading would change; null unless the plan says which grades are treated open. */
  readonly treatments: ChangedCount | null;
}

/** How far each cut-point can move, the others held, before a direction turns; one entry a cut-point. */
export interface CutMoves {
  readonly trend: readonly CutRoom[];
  readonly comparison: readonly CutRoom[] | NotEstimable;
}

/** Would another observer grade it the same? */
export interface Regrading {
  readonly column: string;
  readonly cuts: readonly number[];
  readonly grades: readonly string[];
  /** Analysed cases with a measurement, and without. */
  readonly measured: readonly string[];
  readonly notMeasured: readonly string[];
  /** Recorded grade and measured grade are not the same; null where the grade is cut from the measurement anyway. */
  readonly differing: readonly string[] | null;
  readonly byMeasuredGrade: readonly GradeRate[];
  readonly treatedOpen: readonly string[];
  readonly error: ObserversError | NotEstimable;
  readonly chances: RegradingChancesFound | NotEstimable;
  readonly simulated:
    { readonly simulations: number; readonly seed: number; readonly grades: readonly SimulatedGrade[] } | NotEstimable;
  readonly moves: CutMoves | NotEstimable;
}
