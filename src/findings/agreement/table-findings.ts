import { agreementWithin, type AgreementWithin } from "../../stats/agreement/agreement-within.js";
import { cohenKappa, type KappaResult } from "../../stats/agreement/cohen-kappa.js";
import { namedWeights, type NamedWeights } from "../../stats/agreement/disagreement-weights.js";
import { kappaBootstrap, type KappaBootstrap } from "../../stats/agreement/kappa-bootstrap.js";
import { kappaMaximum, type KappaMaximum } from "../../stats/agreement/kappa-maximum.js";
import { kappaPermutation, type KappaPermutation } from "../../stats/agreement/kappa-permutation.js";
import { prevalenceBias, type GradePrevalenceBias } from "../../stats/agreement/prevalence-bias.js";
import { specificAgreement, type GradeAgreement } from "../../stats/agreement/specific-agreement.js";
import type { SquareTable } from "../../stats/agreement/square-table.js";
import type { NotEstimable } from "../../stats/types.js";

export interface AgreementOptions {
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
}

/** Below this many radiographs the exact permutation test is added. */
export const FEW = 30;

/** Everything two raters' table tells. */
export interface TableFindings {
  readonly table: SquareTable;
  readonly n: number;
  readonly level: number;
  readonly agreement: AgreementWithin;
  readonly withinOne: AgreementWithin;
  readonly kappa: Readonly<Record<NamedWeights, KappaResult>>;
  readonly bootstrap: Readonly<Record<NamedWeights, KappaBootstrap>>;
  readonly permutation: Readonly<Record<NamedWeights, KappaPermutation>> | null;
  readonly maximum: Readonly<Record<NamedWeights, KappaMaximum | NotEstimable>>;
  readonly grades: readonly (GradeAgreement & GradePrevalenceBias)[];
}

/** Agreement, kappas with three kinds of limits, and what kappa depends on, of one table of counts. */
export function tableFindings(table: SquareTable, { level, resamples, seed }: AgreementOptions): TableFindings {
  const agreement = agreementWithin(table, { level });
  const { n } = agreement;
  const shares = prevalenceBias(table).grades;
  return {
    table,
    n,
    level,
    agreement,
    withinOne: agreementWithin(table, { distance: 1, level }),
    kappa: eachWeight((weights) => cohenKappa(table, { weights, level })),
    bootstrap: eachWeight((weights) => kappaBootstrap(table, { weights, level, resamples, seed })),
    permutation: n <= FEW ? eachWeight((weights) => kappaPermutation(table, { weights, seed })) : null,
    maximum: eachWeight((weights) => kappaMaximum(table, { weights })),
    grades: specificAgreement(table, { level }).grades.map((grade, k) => ({ ...grade, ...shares[k]! })),
  };
}

function eachWeight<Result>(of: (weights: NamedWeights) => Result): Record<NamedWeights, Result> {
  return Object.fromEntries(namedWeights.map((weights) => [weights, of(weights)])) as Record<NamedWeights, Result>;
}
