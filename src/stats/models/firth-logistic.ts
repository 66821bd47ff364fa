import type { NotEstimable } from "../types.js";
import { type LogisticData } from "./logistic-data.js";
import { checkedModel, type ModelOptions } from "./model-options.js";
import { modelResult, type ModelFit } from "./model-result.js";
import { findSeparation, type Separation } from "./separation.js";

export interface FirthLogistic extends ModelFit {
  readonly method: "logistic regression, Firth's penalised likelihood";
  /** What maximum likelihood would have met in these data. */
  readonly separation: Separation;
}

/**
 * Logistic regression by Firth's penalised likelihood, which is finite under separation too, with profile limits of the
 * penalised likelihood and penalised likelihood-ratio tests (the penalty that of all columns). Standard errors are from
 * the Fisher information at the estimate.
 *
 * @param data.successes 0 or 1 a case, or successes of `data.trials`
 * @param data.covariates named columns; a constant is added, none may be constant or made up by others
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.eventsPerCovariate of the rarer outcome; default 5
 * @returns the fit, or null with the reason: a constant or dependent column, too few events for the covariates
 * @throws RangeError, TypeError on wrong counts, lengths, values or options
 * @see Firth 1993, Biometrika 80:27-38; Heinze and Schemper 2002, Stat Med 21:2409-2419
 * @example firthLogistic({ successes: [20], trials: [20], covariates: [] }).coefficients[0].estimate // => 3.713572066704
 */
export function firthLogistic(data: LogisticData, options: ModelOptions = {}): FirthLogistic | NotEstimable {
  const { level, design } = checkedModel("firthLogistic", data, options);
  if ("estimate" in design) return design;
  const fit = modelResult(design, { penalised: true, level });
  if ("estimate" in fit) return fit;
  const separation = findSeparation(design);
  return { method: "logistic regression, Firth's penalised likelihood", separation, ...fit };
}
