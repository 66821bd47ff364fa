import { requireOptions } from "../guards.js";
import { logLikelihoodScore } from "./log-likelihood-score.js";
import { requireLimit, requireOddsRatio, requireRisks } from "./require-risks.js";

export interface CusumSignalChance {
  readonly method: "exact Markov chain";
  readonly oddsRatio: number;
  readonly limit: number;
  /** Odds of failure over those expected that the chance is computed for; 1 as expected. */
  readonly trueOddsRatio: number;
  /** Chance that the sum has reached the limit by each case, in order. */
  readonly byCase: readonly number[];
  /** By the last case. */
  readonly chance: number;
}

/** Cases of a series at most: the chain has about one state for each pair of cases. */
const mostCases = 2000;

/**
 * Chance that a risk-adjusted cumulative sum signals within a series of given risks, exactly: since each score is the
 * same log odds ratio for a failure less a term that depends on the risk alone, the sum is known from the last return to
 * 0 and the failures since, which are the states of a Markov chain.
 *
 * @param risks expected risks of the cases, in order
 * @param options.oddsRatio of the chart
 * @param options.limit of the chart, above 0
 * @param options.trueOddsRatio odds of failure over those expected; default 1, which gives the chance of a false alarm
 * @throws RangeError when a risk, an odds ratio or the limit is out of range, or there are more than 2,000 cases
 * @see Brook and Evans 1972, Biometrika 59:539-549 (Markov chain); Steiner et al. 2000 (scores)
 * @example cusumSignalChance([0.1, 0.1], { oddsRatio: 2, limit: 1 }).chance // => 0.01
 */
export function cusumSignalChance(
  risks: readonly number[],
  options: { readonly oddsRatio: number; readonly limit: number; readonly trueOddsRatio?: number },
): CusumSignalChance {
  requireOptions("cusumSignalChance", options, ["oddsRatio", "limit", "trueOddsRatio"]);
  const { oddsRatio, limit, trueOddsRatio = 1 } = options;
  requireRisks("cusumSignalChance", risks);
  requireOddsRatio("cusumSignalChance", oddsRatio);
  requireLimit("cusumSignalChance", limit);
  if (!(trueOddsRatio > 0 && trueOddsRatio < Infinity))
    throw new RangeError(`cusumSignalChance: trueOddsRatio must be positive and finite, got ${trueOddsRatio}`);
  if (risks.length > mostCases)
    throw new RangeError(`cusumSignalChance: cases must number ${mostCases} at most, got ${risks.length}`);
  const byCase = signalled(risks, { oddsRatio, limit, trueOddsRatio });
  return { method: "exact Markov chain", oddsRatio, limit, trueOddsRatio, byCase, chance: byCase.at(-1) ?? 0 };
}

interface State {
  sum: number;
  chance: number;
}

function signalled(
  risks: readonly number[],
  chart: { readonly oddsRatio: number; readonly limit: number; readonly trueOddsRatio: number },
): readonly number[] {
  const { oddsRatio, limit, trueOddsRatio } = chart;
  let states: State[] = [{ sum: 0, chance: 1 }];
  let reached = 0;
  return risks.map((risk) => {
    const { failure, success } = logLikelihoodScore(risk, { oddsRatio });
    const failing = (risk * trueOddsRatio) / (1 - risk + risk * trueOddsRatio);
    const moved: State[] = [];
    let atZero = 0;
    for (const { sum, chance } of states)
      for (const [score, share] of [
        [failure, failing],
        [success, 1 - failing],
      ] as const) {
        const next = sum + score;
        if (next >= limit) reached += chance * share;
        else if (next <= 0) atZero += chance * share;
        else moved.push({ sum: next, chance: chance * share });
      }
    states = merged(moved);
    if (atZero > 0) states.push({ sum: 0, chance: atZero });
    return Math.min(1, reached);
  });
}

/** Sums that differ by rounding only are one state. */
function merged(states: State[]): State[] {
  states.sort((a, b) => a.sum - b.sum);
  const result: State[] = [];
  for (const state of states) {
    const last = result.at(-1);
    if (last && state.sum - last.sum < 1e-11) last.chance += state.chance;
    else result.push(state);
  }
  return result;
}
