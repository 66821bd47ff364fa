import { requireOddsRatio, requireRisks } from "./require-risks.js";

/**
 * What one case adds to a risk-adjusted cumulative sum: the log likelihood ratio of odds of failure multiplied by the
 * odds ratio against odds as expected.
 *
 * @param risk expected chance of failure, above 0 and below 1
 * @param options.oddsRatio to be detected: above 1 a worsening, below 1 an improvement
 * @throws RangeError when risk or odds ratio is out of range
 * @see Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1:441-452, equation 2.3
 * @example logLikelihoodScore(0.1, { oddsRatio: 2 }) // => { failure: 0.597837000755620, success: -0.0953101798043249 }
 */
export function logLikelihoodScore(
  risk: number,
  options: { readonly oddsRatio: number },
): { readonly failure: number; readonly success: number } {
  requireRisks("logLikelihoodScore", [risk]);
  const { oddsRatio } = options;
  requireOddsRatio("logLikelihoodScore", oddsRatio);
  const success = -Math.log1p(risk * (oddsRatio - 1));
  return { failure: Math.log(oddsRatio) + success, success };
}
