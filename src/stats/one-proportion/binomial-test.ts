import { binomialMass } from "../../numeric/binomial-mass.js";
import { binomialTails } from "../../numeric/binomial.js";
import { requireCount, requireOptions } from "../guards.js";
import type { Count } from "../types.js";

/** Exact p values of one count against a stated proportion, two-sided by three conventions and one-sided both ways. */
export interface BinomialTestResult extends Count {
  readonly method: "binomialTest";
  readonly proportion: number;
  /** Two-sided: all counts no likelier than the observed one (relative tolerance 1e-7). The default convention. */
  readonly pointProbability: number;
  /** Two-sided: twice the smaller tail, at most 1. */
  readonly doubled: number;
  /** Two-sided: `pointProbability` less half the probability of the observed count. */
  readonly midP: number;
  /** One-sided: as few successes, or fewer. */
  readonly less: number;
  /** One-sided: as many successes, or more. */
  readonly greater: number;
}

/**
 * Exact binomial test of one proportion against a stated one.
 *
 * @param successes integer from 0 to `trials`
 * @param trials integer of at least 1
 * @param options.proportion the proportion tested, in [0, 1]
 * @throws RangeError when a count or the proportion is out of range
 * @see Clopper and Pearson 1934, Biometrika 26:404-413; Conover 1999, Practical nonparametric statistics, section 3.1
 * @example binomialTest(9, 10, { proportion: 0.5 }).pointProbability // => 0.021484375
 */
export function binomialTest(
  successes: number,
  trials: number,
  options: { readonly proportion: number },
): BinomialTestResult {
  requireOptions("binomialTest", options, ["proportion"]);
  requireCount("binomialTest", successes, trials);
  const { proportion } = options;
  if (!(proportion >= 0 && proportion <= 1))
    throw new RangeError(`binomialTest: proportion must lie in [0, 1], got ${proportion}`);
  const less = binomialTails(successes, trials, proportion).lower;
  const greater = binomialTails(successes - 1, trials, proportion).upper;
  const observed = binomialMass(successes, trials, proportion, 1 - proportion);
  const pointProbability = Math.min(1, unlikely(successes, trials, proportion, { less, greater, observed }));
  return {
    method: "binomialTest",
    successes,
    trials,
    proportion,
    pointProbability,
    doubled: Math.min(1, 2 * Math.min(less, greater)),
    midP: pointProbability - observed / 2,
    less,
    greater,
  };
}

/** The tail at the observed count and the opposite tail of the counts that are no likelier. */
function unlikely(
  successes: number,
  trials: number,
  proportion: number,
  at: { readonly less: number; readonly greater: number; readonly observed: number },
): number {
  const mean = trials * proportion;
  const bound = at.observed * (1 + 1e-7);
  const noLikelier = (k: number): boolean => binomialMass(k, trials, proportion, 1 - proportion) <= bound;
  if (successes === mean) return 1;
  if (successes < mean) {
    const first = firstWhere(noLikelier, Math.ceil(mean), trials + 1);
    return at.less + binomialTails(first - 1, trials, proportion).upper;
  }
  const first = firstWhere((j) => noLikelier(-j), -Math.floor(mean), 1);
  return at.greater + binomialTails(-first, trials, proportion).lower;
}

/** The first integer from `low` on for which a condition holds that stays true from there on; `end` if none below it. */
function firstWhere(holds: (k: number) => boolean, low: number, end: number): number {
  let [from, to] = [low, end];
  while (from < to) {
    // Not (from + to) / 2, which is no longer exact near 2^53.
    const middle = from + Math.floor((to - from) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
