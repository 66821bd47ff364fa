import { disagreementWeights, type AgreementWeights } from "./disagreement-weights.js";

/** Agreement weights from 0 to 1, 1 on the diagonal: 1 less the disagreement weights over the largest. */
export function agreeingWeights(caller: string, size: number, weights: AgreementWeights): number[][] {
  const apart = disagreementWeights(caller, size, weights);
  const largest = Math.max(...apart.flat());
  return apart.map((row) => row.map((weight) => (largest > 0 ? 1 - weight / largest : 1)));
}
