import { requireOptions } from "../guards.js";
import { cusumSignalChance } from "./cusum-signal-chance.js";
import { requireOddsRatio, requireRisks } from "./require-risks.js";
import type { NotEstimable } from "../types.js";

export interface CusumLimit {
  readonly method: "limit by exact Markov chain";
  readonly cases: number;
  readonly oddsRatio: number;
  readonly falseAlarm: number;
  /** The lowest limit, to 1e-7, whose chance of a false alarm is no larger than asked for. */
  readonly limit: number;
  /** That chance: below what was asked for, since the sum moves in jumps. */
  readonly achieved: number;
  /** Chance of a signal within the series if the odds of failure are multiplied by the odds ratio. */
  readonly detects: number;
}

const precision = 1e-7;

/**
 * Limit of a risk-adjusted cumulative sum for a series of given risks, with a stated chance of a false alarm over the
 * whole series.
 *
 * @param risks expected risks of the cases, in order
 * @param options.oddsRatio of the chart
 * @param options.falseAlarm chance of a signal within the series though all is as expected, in (0, 1); default 0.05
 * @returns the limit, or null with the reason when the series is empty
 * @throws RangeError when an argument is out of range
 * @see Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1:441-452, section 3
 * @example cusumLimit([0.1, 0.1], { oddsRatio: 2, falseAlarm: 0.05 }).achieved // => 0.01
 */
export function cusumLimit(
  risks: readonly number[],
  options: { readonly oddsRatio: number; readonly falseAlarm?: number },
): CusumLimit | NotEstimable {
  requireOptions("cusumLimit", options, ["oddsRatio", "falseAlarm"]);
  const { oddsRatio, falseAlarm = 0.05 } = options;
  requireRisks("cusumLimit", risks);
  requireOddsRatio("cusumLimit", oddsRatio);
  if (!(falseAlarm > 0 && falseAlarm < 1))
    throw new RangeError(`cusumLimit: falseAlarm must lie between 0 and 1, got ${falseAlarm}`);
  if (risks.length === 0) return { estimate: null, because: "there is no case" };
  const chanceAt = (limit: number): number => cusumSignalChance(risks, { oddsRatio, limit }).chance;
  let [low, high] = [0, 0.5];
  // From below, since a low limit leaves the chain few states.
  while (chanceAt(high) > falseAlarm) [low, high] = [high, 2 * high];
  while (high - low > precision) {
    const middle = (low + high) / 2;
    if (chanceAt(middle) <= falseAlarm) high = middle;
    else low = middle;
  }
  return {
    method: "limit by exact Markov chain",
    cases: risks.length,
    oddsRatio,
    falseAlarm,
    limit: high,
    achieved: chanceAt(high),
    detects: cusumSignalChance(risks, { oddsRatio, limit: high, trueOddsRatio: oddsRatio }).chance,
  };
}
