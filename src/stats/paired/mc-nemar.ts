import { binomialMass } from "../../numeric/binomial-mass.js";
import { binomialCdf } from "../../numeric/binomial.js";
import { normalUpper } from "../../numeric/normal.js";
import type { NotEstimable } from "../types.js";
import { requirePairs, type Pairs } from "./pairs.js";

/** McNemar's test of equal proportions in pairs: two-sided p values given the discordant pairs. */
export type McNemarResult = { readonly method: "mcNemar"; readonly pairs: Pairs } & (
  | {
      /** Twice the smaller binomial tail, at most 1. */
      readonly exact: number;
      /** `exact` less the probability of the observed split; less half of it when both directions are equal. */
      readonly midP: number;
      readonly asymptotic: { readonly statistic: number; readonly p: number };
      /** With the continuity correction, never more than the deviation itself. */
      readonly corrected: { readonly statistic: number; readonly p: number };
    }
  | NotEstimable
);

/**
 * McNemar's test for paired yes-or-no results, which rests on the discordant pairs alone: undefined without any.
 * @param pairs counts of pairs: both succeeded, only the first, only the second, neither
 * @throws RangeError when a cell is no count or there is no pair
 * @see McNemar 1947, Psychometrika 12:153-157; Edwards 1948, Psychometrika 13:185-187 (correction); Fagerland, Lydersen, Laake
 *   2013, BMC Med Res Methodol 13:91 (exact, mid-P)
 * @example mcNemar({ both: 1, firstOnly: 1, secondOnly: 7, neither: 12 }).midP // => 0.0390625
 */
export function mcNemar(pairs: Pairs): McNemarResult {
  requirePairs("mcNemar", pairs);
  const { firstOnly: b, secondOnly: c } = pairs;
  const discordant = b + c;
  if (discordant === 0) return { method: "mcNemar", pairs, estimate: null, because: "no pair is discordant" };
  const fewer = Math.min(b, c);
  const tail = binomialCdf(fewer, { trials: discordant, probability: 0.5 });
  const observed = binomialMass(fewer, discordant, 0.5, 0.5);
  const test = (deviation: number) => {
    const z = deviation / Math.sqrt(discordant);
    return { statistic: z ** 2, p: Math.min(1, 2 * normalUpper(z)) };
  };
  return {
    method: "mcNemar",
    pairs,
    exact: Math.min(1, 2 * tail),
    midP: b === c ? 1 - observed / 2 : 2 * tail - observed,
    asymptotic: test(Math.abs(b - c)),
    corrected: test(Math.max(0, Math.abs(b - c) - 1)),
  };
}
