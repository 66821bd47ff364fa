import { requireOptions } from "../guards.js";
import { logLikelihoodScore } from "./log-likelihood-score.js";
import type { RiskedCase } from "./observed-minus-expected.js";
import { requireLimit, requireOddsRatio, requireRisks } from "./require-risks.js";

export interface RiskAdjustedCusum {
  readonly method: "risk-adjusted log-likelihood cumulative sum";
  readonly oddsRatio: number;
  /** Null when none was given: then nothing signals. */
  readonly limit: number | null;
  /** One a case: what it added and where the sum, never below 0, then stood. */
  readonly steps: readonly {
    readonly failed: boolean;
    readonly risk: number;
    readonly score: number;
    readonly sum: number;
  }[];
  /** 1-based numbers of the cases at which the sum reached the limit; it starts again from 0 after each. */
  readonly signals: readonly number[];
}

/**
 * Risk-adjusted cumulative sum: rises with failures that the risks did not lead to expect and rests at 0.
 *
 * Odds ratio and limit must be set before the cases are looked at; see `cusumLimit` for a limit with a stated chance of
 * a false alarm.
 *
 * @param cases in the order of treatment, each with its expected risk of failure
 * @param options.oddsRatio change of the odds of failure to be detected, above 0 and not 1
 * @param options.limit at which the chart signals, above 0
 * @throws RangeError when a risk, the odds ratio or the limit is out of range
 * @see Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1:441-452
 * @example riskAdjustedCusum([{ failed: true, risk: 0.1 }, { failed: true, risk: 0.1 }], { oddsRatio: 2, limit: 1 }).signals // => [2]
 */
export function riskAdjustedCusum(
  cases: readonly RiskedCase[],
  options: { readonly oddsRatio: number; readonly limit?: number },
): RiskAdjustedCusum {
  requireOptions("riskAdjustedCusum", options, ["oddsRatio", "limit"]);
  const { oddsRatio, limit } = options;
  requireOddsRatio("riskAdjustedCusum", oddsRatio);
  if (limit !== undefined) requireLimit("riskAdjustedCusum", limit);
  requireRisks(
    "riskAdjustedCusum",
    cases.map(({ risk }) => risk),
  );
  const signals: number[] = [];
  let before = 0;
  const steps = cases.map(({ failed, risk }, index) => {
    const scores = logLikelihoodScore(risk, { oddsRatio });
    const score = failed ? scores.failure : scores.success;
    const sum = Math.max(0, before + score);
    const signal = limit !== undefined && sum >= limit;
    if (signal) signals.push(index + 1);
    before = signal ? 0 : sum;
    return { failed, risk, score, sum };
  });
  return { method: "risk-adjusted log-likelihood cumulative sum", oddsRatio, limit: limit ?? null, steps, signals };
}
