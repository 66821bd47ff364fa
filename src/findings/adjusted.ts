import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { firthLogistic } from "../stats/models/firth-logistic.js";
import { gradeCovariates } from "../stats/models/grade-covariates.js";
import type { NotEstimable } from "../stats/types.js";
import type { Adjusted } from "./types.js";

/** Fewer of the rarer outcome than this for each column of the model, and no model is fitted. */
export const eventsPerCovariate = 4;

/** Closed against open first with grade as a score, by penalised logistic regression; null with the reason when too few failed. */
export function adjusted(
  cases: readonly LedgerCase[],
  grades: readonly string[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  level: number,
): Adjusted | NotEstimable {
  const compared = cases.filter(
    ({ firstTechnique, grade }) => (firstTechnique === "closed" || firstTechnique === "open") && grade !== null,
  );
  if (compared.some((one) => judgementOf(one) === "asked"))
    return { estimate: null, because: "questions are open on some of these cases" };
  if (compared.length === 0)
    return { estimate: null, because: "no case was treated closed or open first in a known grade" };
  const fit = firthLogistic(
    {
      successes: compared.map((one) => (judgementOf(one) === "yes" ? 1 : 0)),
      covariates: [
        { name: "closed first", values: compared.map(({ firstTechnique }) => (firstTechnique === "closed" ? 1 : 0)) },
        ...gradeCovariates(
          compared.map(({ grade }) => grade!),
          { order: grades },
        ),
      ],
    },
    { level, eventsPerCovariate },
  );
  if ("estimate" in fit) return fit;
  const [, closed, grade] = fit.coefficients;
  return {
    method: fit.method,
    failures: fit.cases - fit.successes,
    cases: compared.map(({ id }) => id),
    oddsRatio: { ...closed!.oddsRatio, p: closed!.likelihoodRatio.p },
    grade: grade!.oddsRatio,
  };
}
