import type { NotEstimable } from "../types.js";
import { requireChildren, successesOf, totalsOf, type Child } from "./children.js";

export interface CorrelationWithinChild {
  readonly method: "analysis of variance";
  readonly children: number;
  readonly trials: number;
  /** May be below 0 by chance. */
  readonly estimate: number;
}

export type CorrelationNotEstimable = NotEstimable & Pick<CorrelationWithinChild, "method" | "children" | "trials">;

/**
 * How alike the limbs of one child are: the intraclass correlation of a yes-or-no outcome, by analysis of variance.
 *
 * @param children for each child, its limbs
 * @throws RangeError when there is no child or a child without limb
 * @see Ridout, Demetrio and Firth 1999, Biometrics 55:137-148 (ANOVA estimator)
 * @example correlationWithinChild([[true, true], [false, false], [true, false]]).estimate // => 0.5
 */
export function correlationWithinChild(children: readonly Child[]): CorrelationWithinChild | CorrelationNotEstimable {
  requireChildren("correlationWithinChild", children);
  const { children: k, successes, trials, squares } = totalsOf(children);
  const about = { method: "analysis of variance", children: k, trials } as const;
  if (trials === k) return { ...about, estimate: null, because: "no child has more than one limb" };
  if (k === 1) return { ...about, estimate: null, because: "there is only one child" };
  if (successes === 0 || successes === trials)
    return { ...about, estimate: null, because: `every limb ${successes === 0 ? "failed" : "succeeded"}` };

  const explained = children.reduce((sum, limbs) => sum + successesOf(limbs) ** 2 / limbs.length, 0);
  const between = (explained - successes ** 2 / trials) / (k - 1);
  const within = (successes - explained) / (trials - k);
  const limbsAChild = (trials - squares / trials) / (k - 1);
  return { ...about, estimate: (between - within) / (between + (limbsAChild - 1) * within) };
}
