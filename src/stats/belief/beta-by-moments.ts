import { requireNumbers } from "../guards.js";
import type { NotEstimable } from "../types.js";

/** Shape of a beta distribution that stands for what is believed of a proportion. */
export interface BetaBelief {
  readonly a: number;
  readonly b: number;
}

export type BetaByMomentsResult = {
  readonly method: "beta, by moments";
  /** How many guesses there are. */
  readonly n: number;
} & (
  | (BetaBelief & {
      readonly mean: number;
      /** With n - 1. */
      readonly variance: number;
    })
  | NotEstimable
);

/**
 * The beta distribution with the mean and the variance of several guesses at one proportion.
 *
 * @param guesses fractions in [0, 1]
 * @throws RangeError when a guess is no fraction
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.17 (moment estimators of the beta distribution)
 * @example betaByMoments([0.25, 0.5, 0.75]) // => { a: 1.5, b: 1.5 }
 */
export function betaByMoments(guesses: readonly number[]): BetaByMomentsResult {
  requireNumbers("betaByMoments", "guesses", guesses, 0);
  const wrong = guesses.find((guess) => guess < 0 || guess > 1);
  if (wrong !== undefined) throw new RangeError(`betaByMoments: guesses must lie from 0 to 1, got ${wrong}`);
  const n = guesses.length;
  const none = (because: string): BetaByMomentsResult => ({ method: "beta, by moments", n, estimate: null, because });
  if (n < 2) return none("one guess has no spread");
  if (guesses.every((guess) => guess === guesses[0])) return none("all guesses are equal, so they have no spread");
  const mean = guesses.reduce((sum, guess) => sum + guess, 0) / n;
  const variance = guesses.reduce((sum, guess) => sum + (guess - mean) ** 2, 0) / (n - 1);
  const weight = (mean * (1 - mean)) / variance - 1;
  // Rounding must not make a curve of guesses that all lie at the ends.
  if (!(weight > 1e-9)) return none("the guesses lie so far apart that no beta curve has their spread");
  return { method: "beta, by moments", n, a: mean * weight, b: (1 - mean) * weight, mean, variance };
}
