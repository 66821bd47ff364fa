import { normalCdf } from "../../numeric/normal.js";
import { random } from "../../numeric/random.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { gradePlace, requireCuts, requireValues } from "./cut-points.js";

export interface RegradedSuccess {
  /** Place of the grade, 0 first. */
  readonly grade: number;
  readonly successes: number;
  readonly trials: number;
  /** Cases in the grade over the simulated gradings. */
  readonly simulatedTrials: { readonly median: number; readonly range: Interval };
  /** Success in the grade over those gradings that put a case there. */
  readonly simulated: { readonly estimate: number; readonly range: Interval; readonly used: number } | NotEstimable;
}

export interface SuccessUnderRegrading {
  readonly method: "gradings simulated with the error of measurement";
  readonly cuts: readonly number[];
  readonly error: number;
  readonly simulations: number;
  readonly seed: number;
  readonly level: number;
  readonly grades: readonly RegradedSuccess[];
}

/**
 * Success by grade when every measurement is drawn again within the observers' own error and cut anew.
 *
 * The range says how much the grading alone could move the figures; the spread of the cases themselves comes on top.
 *
 * @param cases measurement and outcome of each case
 * @param options.cuts cut-points, rising
 * @param options.error standard error of measurement, at least 0
 * @param options.simulations at least 100; default 2,000
 * @param options.seed integer, 0 to 2^32 - 1; default 1
 * @param options.level of the ranges, in (0, 1); default 0.95
 * @throws RangeError when an argument is out of range; TypeError for unknown options
 * @example successUnderRegrading([{ value: 10, success: true }, { value: 90, success: false }], { cuts: [50], error: 1 }).grades[0].simulated.estimate // => 1
 */
export function successUnderRegrading(
  cases: readonly { readonly value: number; readonly success: boolean }[],
  options: {
    readonly cuts: readonly number[];
    readonly error: number;
    readonly simulations?: number;
    readonly seed?: number;
    readonly level?: number;
  },
): SuccessUnderRegrading {
  requireOptions("successUnderRegrading", options, ["cuts", "error", "simulations", "seed", "level"]);
  const { cuts, error, simulations = 2000, seed = 1, level = 0.95 } = options;
  requireLevel("successUnderRegrading", level);
  requireCuts("successUnderRegrading", cuts);
  requireValues(
    "successUnderRegrading",
    cases.map(({ value }) => value),
  );
  if (!(error >= 0 && Number.isFinite(error)))
    throw new RangeError(`successUnderRegrading: error must be at least 0, got ${error}`);
  if (!(Number.isSafeInteger(simulations) && simulations >= 100))
    throw new RangeError(`successUnderRegrading: simulations must be an integer of at least 100, got ${simulations}`);
  const size = cuts.length + 1;
  const [won, held] = simulate(cases, cuts, error, { simulations, seed });
  const range = (sorted: Float64Array): Interval => ({
    low: place(sorted, (1 - level) / 2),
    high: place(sorted, (1 + level) / 2),
  });
  const grades = Array.from({ length: size }, (_, grade): RegradedSuccess => {
    const inGrade = cases.filter(({ value }) => gradePlace(value, cuts) === grade);
    const trials = held[grade]!.toSorted();
    const rates = won[grade]!.map((count, k) => count / held[grade]![k]!)
      .filter((rate) => !Number.isNaN(rate))
      .toSorted();
    return {
      grade,
      successes: inGrade.filter(({ success }) => success).length,
      trials: inGrade.length,
      simulatedTrials: { median: place(trials, 0.5), range: range(trials) },
      simulated:
        rates.length === 0
          ? { estimate: null, because: "no simulated grading put a case in this grade" }
          : { estimate: place(rates, 0.5), range: range(rates), used: rates.length },
    };
  });
  return { method: "gradings simulated with the error of measurement", cuts, error, simulations, seed, level, grades };
}

function simulate(
  cases: readonly { readonly value: number; readonly success: boolean }[],
  cuts: readonly number[],
  error: number,
  { simulations, seed }: { readonly simulations: number; readonly seed: number },
): [Float64Array[], Float64Array[]] {
  const stream = random(seed);
  const counts = (): Float64Array[] => Array.from({ length: cuts.length + 1 }, () => new Float64Array(simulations));
  const [won, held] = [counts(), counts()];
  // A draw passes a cut when its uniform reaches the chance of staying below it: one distribution function for each case
  // and cut in place of one quantile for each draw.
  const below = cases.map(({ value }) =>
    cuts.map((cut) => (error === 0 ? Number(value <= cut) : normalCdf((cut - value) / error))),
  );
  for (let k = 0; k < simulations; k++)
    for (const [i, { success }] of cases.entries()) {
      const draw = stream.uniform();
      let grade = 0;
      while (grade < cuts.length && draw >= below[i]![grade]!) grade++;
      held[grade]![k]!++;
      if (success) won[grade]![k]!++;
    }
  return [won, held];
}

/** Quantile of sorted values, linear between them. */
function place(sorted: Float64Array, p: number): number {
  const at = (sorted.length - 1) * p;
  const low = sorted[Math.floor(at)]!;
  return low + (at - Math.floor(at)) * (sorted[Math.ceil(at)]! - low);
}
