import type { NotEstimable } from "../types.js";
import { type LogisticData } from "./logistic-data.js";
import { checkedModel, type ModelOptions } from "./model-options.js";
import { modelResult, type ModelFit } from "./model-result.js";
import { findSeparation, type Separation } from "./separation.js";

export interface Logistic extends ModelFit {
  readonly method: "logistic regression, maximum likelihood";
}

/** Why there is no maximum likelihood fit; `separation` is there when that is the reason. */
export interface NoLogistic extends NotEstimable {
  readonly separation?: Separation;
}

/**
 * Logistic regression by maximum likelihood, with profile limits and likelihood-ratio tests. Separation is looked for
 * first, by linear programs, and the columns without a finite estimate are named: see `firthLogistic` for that case.
 *
 * @param data.successes 0 or 1 a case, or successes of `data.trials`
 * @param data.covariates named columns; a constant is added, none may be constant or made up by others
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.eventsPerCovariate of the rarer outcome; default 5
 * @returns the fit, or null with the reason: all or no success, a constant or dependent column, too few events for the
 *   covariates, separation
 * @throws RangeError, TypeError on wrong counts, lengths, values or options
 * @see McCullagh and Nelder 1989, Generalized Linear Models, chapter 4; limits of Venzon and Moolgavkar 1988
 * @example logistic({ successes: [30, 29], trials: [74, 115], covariates: [{ name: "smoker", values: [1, 0] }] }).coefficients[1].estimate // => 0.704059214011
 */
export function logistic(data: LogisticData, options: ModelOptions = {}): Logistic | NoLogistic {
  const { level, design } = checkedModel("logistic", data, options);
  if ("estimate" in design) return design;
  if (design.events === 0 || design.events === design.cases)
    return { estimate: null, because: design.events === 0 ? "no case succeeded" : "every case succeeded" };
  const separation = findSeparation(design);
  if (separation.kind !== "none") {
    const columns = separation.columns.map((name) => `"${name}"`).join(", ");
    const because = `successes and failures are separated (${separation.kind}): no finite estimate for ${columns}`;
    return { estimate: null, because, separation };
  }
  const fit = modelResult(design, { penalised: false, level });
  return "estimate" in fit ? fit : { method: "logistic regression, maximum likelihood", ...fit };
}
