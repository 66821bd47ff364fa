import { random } from "../../numeric/random.js";
import { requireOptions } from "../guards.js";
import { requireSimulation } from "../measurements/require-simulation.js";
import { logLikelihoodScore } from "./log-likelihood-score.js";
import { requireLimit, requireOddsRatio, requireRisks } from "./require-risks.js";

export interface CusumRunLength {
  readonly method: "seeded simulation";
  readonly oddsRatio: number;
  readonly limit: number;
  readonly trueOddsRatio: number;
  readonly seed: number;
  readonly draws: number;
  /** Runs that had not signalled after the most cases simulated; with any, the mean is a lower bound. */
  readonly cut: number;
  /** Mean number of cases to a signal. */
  readonly estimate: number;
  /** Standard error of the simulation. */
  readonly standardError: number;
}

/**
 * Mean number of cases until a risk-adjusted cumulative sum signals, for cases coming at random from a mix of risks, by
 * seeded simulation with its error.
 *
 * @param mix risks with their shares; the shares need not add to 1
 * @param options.oddsRatio of the chart
 * @param options.limit of the chart, above 0
 * @param options.trueOddsRatio odds of failure over those expected; default 1
 * @param options.seed default 1
 * @param options.draws runs simulated; default 2000
 * @param options.mostCases a run ends here without a signal; default 20000
 * @throws RangeError when an argument is out of range
 * @see Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1:441-452, section 3
 * @example cusumRunLength([{ risk: 0.5, share: 1 }], { oddsRatio: 4, limit: 0.4, draws: 100 }).cut // => 0
 */
export function cusumRunLength(
  mix: readonly { readonly risk: number; readonly share: number }[],
  options: {
    readonly oddsRatio: number;
    readonly limit: number;
    readonly trueOddsRatio?: number;
    readonly seed?: number;
    readonly draws?: number;
    readonly mostCases?: number;
  },
): CusumRunLength {
  requireOptions("cusumRunLength", options, ["oddsRatio", "limit", "trueOddsRatio", "seed", "draws", "mostCases"]);
  const { oddsRatio, limit, trueOddsRatio = 1, seed = 1, draws = 2000, mostCases = 20_000 } = options;
  requireMix(mix);
  requireOddsRatio("cusumRunLength", oddsRatio);
  requireLimit("cusumRunLength", limit);
  requireSimulation("cusumRunLength", { seed, draws });
  if (!(trueOddsRatio > 0 && trueOddsRatio < Infinity))
    throw new RangeError(`cusumRunLength: trueOddsRatio must be positive and finite, got ${trueOddsRatio}`);
  if (!(Number.isInteger(mostCases) && mostCases >= 1 && mostCases * draws <= 1e9))
    throw new RangeError(
      `cusumRunLength: mostCases must be an integer of at least 1, times draws 1e9 at most, got ${mostCases}`,
    );

  const draw = caseSource(mix, { oddsRatio, trueOddsRatio, seed });
  let [cut, total, squares] = [0, 0, 0];
  for (let run = 0; run < draws; run++) {
    let cases = 0;
    let sum = 0;
    while (sum < limit && cases < mostCases) {
      sum = Math.max(0, sum + draw());
      cases++;
    }
    if (sum < limit) cut++;
    total += cases;
    squares += cases * cases;
  }
  const estimate = total / draws;
  const variance = Math.max(0, squares / draws - estimate ** 2);
  const standardError = Math.sqrt(variance / draws);
  return { method: "seeded simulation", oddsRatio, limit, trueOddsRatio, seed, draws, cut, estimate, standardError };
}

function requireMix(mix: readonly { readonly risk: number; readonly share: number }[]): void {
  if (mix.length === 0) throw new RangeError("cusumRunLength: mix must hold at least 1 risk, got 0");
  requireRisks(
    "cusumRunLength",
    mix.map(({ risk }) => risk),
  );
  const wrong = mix.find(({ share }) => !(share > 0 && share < Infinity));
  if (wrong) throw new RangeError(`cusumRunLength: every share must be positive and finite, got ${wrong.share}`);
}

/** Scores of cases drawn at random from the mix. */
function caseSource(
  mix: readonly { readonly risk: number; readonly share: number }[],
  chart: { readonly oddsRatio: number; readonly trueOddsRatio: number; readonly seed: number },
): () => number {
  const stream = random(chart.seed);
  const all = mix.reduce((sum, { share }) => sum + share, 0);
  let reached = 0;
  const kinds = mix.map(({ risk, share }) => {
    reached += share / all;
    const failing = (risk * chart.trueOddsRatio) / (1 - risk + risk * chart.trueOddsRatio);
    return { upTo: reached, failing, ...logLikelihoodScore(risk, { oddsRatio: chart.oddsRatio }) };
  });
  const last = kinds.at(-1)!;
  return () => {
    const at = stream.uniform();
    const kind = kinds.find(({ upTo }) => at < upTo) ?? last;
    return stream.uniform() < kind.failing ? kind.failure : kind.success;
  };
}
