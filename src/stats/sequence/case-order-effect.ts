import { requireOptions } from "../guards.js";
import { firthLogistic } from "../models/firth-logistic.js";
import { gradeCovariates } from "../models/grade-covariates.js";
import type { Coefficient } from "../models/model-result.js";
import type { NotEstimable } from "../types.js";

export interface CaseOrderEffect {
  readonly method: "case order as a covariate, Firth's penalised likelihood";
  readonly level: number;
  readonly cases: number;
  readonly failures: number;
  readonly perCases: number;
  /** Log odds of success for each `perCases` further cases, grade held equal. */
  readonly order: Coefficient;
  /** Log odds of success a grade; null when grade was not given. */
  readonly grade: Coefficient | null;
}

/**
 * Did success change with the number of the case, at equal grade? All cases enter by their order: no split of the series
 * is chosen.
 *
 * @param cases in the order of treatment, each with its success and, for all or none, its grade
 * @param options.gradeOrder every grade from the mildest to the worst; needed when cases have grades
 * @param options.perCases unit of the effect; default 10 cases
 * @param options.level coverage; default 0.95
 * @param options.eventsPerCovariate see `limitCovariates`; default 5
 * @returns the effect, or null with the reason: too few failures for two covariates, cases of one grade, one case
 * @throws RangeError, TypeError when an argument is out of range
 * @see Ramsay et al. 2001, Health Technol Assess 5(12), on learning curves; Heinze and Schemper 2002 for the fit
 * @example caseOrderEffect([{ succeeded: false }, { succeeded: true }]).because // => "1 covariate needs at least 5 of the rarer outcome (5 for each), there are 1"
 */
export function caseOrderEffect(
  cases: readonly { readonly succeeded: boolean; readonly grade?: string }[],
  options: {
    readonly gradeOrder?: readonly string[];
    readonly perCases?: number;
    readonly level?: number;
    readonly eventsPerCovariate?: number;
  } = {},
): CaseOrderEffect | NotEstimable {
  requireOptions("caseOrderEffect", options, ["gradeOrder", "perCases", "level", "eventsPerCovariate"]);
  const { gradeOrder, perCases = 10, level = 0.95, eventsPerCovariate = 5 } = options;
  if (!(perCases > 0 && perCases < Infinity))
    throw new RangeError(`caseOrderEffect: perCases must be positive and finite, got ${perCases}`);
  if (cases.length === 0) return { estimate: null, because: "there is no case" };
  const grades = cases.map(({ grade }) => grade);
  if (gradeOrder === undefined && grades.some((grade) => grade !== undefined))
    throw new TypeError("caseOrderEffect: gradeOrder must be given with cases that have a grade, got none");
  const fit = firthLogistic(
    {
      successes: cases.map(({ succeeded }) => (succeeded ? 1 : 0)),
      covariates: [
        { name: "case order", values: cases.map((_, index) => (index + 1) / perCases) },
        ...(gradeOrder ? gradeCovariates(grades.map(String), { order: gradeOrder }) : []),
      ],
    },
    { level, eventsPerCovariate },
  );
  if ("estimate" in fit) return fit;
  return {
    method: "case order as a covariate, Firth's penalised likelihood",
    level,
    cases: cases.length,
    failures: fit.cases - fit.successes,
    perCases,
    order: fit.coefficients[1]!,
    grade: fit.coefficients[2] ?? null,
  };
}
