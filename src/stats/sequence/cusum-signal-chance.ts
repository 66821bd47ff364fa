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

/** States of the chain in ascending order of the sum, and their chances. */
interface States {
  readonly sums: Float64Array;
  readonly chances: Float64Array;
}

function signalled(
  risks: readonly number[],
  chart: { readonly oddsRatio: number; readonly limit: number; readonly trueOddsRatio: number },
): readonly number[] {
  const { oddsRatio, limit, trueOddsRatio } = chart;
  let states: States = { sums: new Float64Array(1), chances: new Float64Array([1]) };
  let reached = 0;
  return risks.map((risk) => {
    const { failure, success } = logLikelihoodScore(risk, { oddsRatio });
    const failing = (risk * trueOddsRatio) / (1 - risk + risk * trueOddsRatio);
    states = merged(moves(states, success, 1 - failing), moves(states, failure, failing));
    let out = 0;
    // From the largest sum down: those past the limit leave the chain.
    let kept = states.sums.length;
    while (kept > 0 && states.sums[kept - 1]! >= limit) out += states.chances[--kept]!;
    states = { sums: states.sums.subarray(0, kept), chances: states.chances.subarray(0, kept) };
    reached += out;
    return Math.min(1, reached);
  });
}

function moves({ sums, chances }: States, score: number, share: number): States {
  return { sums: sums.map((sum) => Math.max(0, sum + score)), chances: chances.map((chance) => chance * share) };
}

/** Both lists in one ascending list; sums that differ by rounding only are one state. */
function merged(a: States, b: States): States {
  const size = a.sums.length + b.sums.length;
  const [sums, chances] = [new Float64Array(size), new Float64Array(size)];
  let [i, j, count] = [0, 0, 0];
  while (i + j < size) {
    const fromA = j >= b.sums.length || (i < a.sums.length && a.sums[i]! <= b.sums[j]!);
    const sum = fromA ? a.sums[i]! : b.sums[j]!;
    const chance = fromA ? a.chances[i++]! : b.chances[j++]!;
    if (count > 0 && sum - sums[count - 1]! < 1e-11) chances[count - 1]! += chance;
    else {
      sums[count] = sum;
      chances[count++] = chance;
    }
  }
  return { sums: sums.subarray(0, count), chances: chances.subarray(0, count) };
}
