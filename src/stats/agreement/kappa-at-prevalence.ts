import type { NotEstimable } from "../types.js";

export type KappaAtPrevalence = {
  readonly method: "kappa of two grades at fixed agreement, raters alike";
  readonly agreement: number;
  readonly prevalence: number;
} & ({ readonly estimate: number } | NotEstimable);

/**
 * Kappa of two raters and two grades when agreement stays and only the prevalence of a grade changes; both raters use the
 * grade equally often.
 *
 * @param agreement observed agreement, 0 to 1
 * @param prevalence share of readings with the grade, 0 to 1
 * @throws RangeError when a share is out of range
 * @returns the value, or why there is none: with that agreement the grade cannot be so rare or so common
 * @see Feinstein and Cicchetti 1990, J Clin Epidemiol 43:543-549; Byrt, Bishop and Carlin 1993, J Clin Epidemiol 46:423-429
 * @example kappaAtPrevalence(0.9, 0.5).estimate // => 0.8
 */
export function kappaAtPrevalence(agreement: number, prevalence: number): KappaAtPrevalence {
  for (const [name, value] of [
    ["agreement", agreement],
    ["prevalence", prevalence],
  ] as const)
    if (!(value >= 0 && value <= 1)) throw new RangeError(`kappaAtPrevalence: ${name} must be 0 to 1, got ${value}`);
  const shared = { method: "kappa of two grades at fixed agreement, raters alike", agreement, prevalence } as const;
  const apart = (1 - agreement) / 2;
  if (prevalence < apart - 1e-12 || 1 - prevalence < apart - 1e-12)
    return { ...shared, estimate: null, because: "the raters disagree too often for a grade so rare or so common" };
  const bothWays = 2 * prevalence * (1 - prevalence);
  if (bothWays === 0) return { ...shared, estimate: null, because: "only one grade is used" };
  return { ...shared, estimate: 1 - (1 - agreement) / bothWays };
}
