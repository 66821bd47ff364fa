import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { clusteredLevel, type Child, type ClusteredCount } from "./children.js";

export interface FirstLimbResult extends ClusteredCount {
  readonly method: "first limb of each child, wilson";
  readonly interval: Interval;
}

/**
 * Success of the first treated limb of each child: one limb a child, so the limbs are unrelated.
 *
 * @param children for each child, its limbs in the order treated
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there is no child, a child without limb, or the level is out of range
 * @see Wilson 1927, J Am Stat Assoc 22:209-212; one unit a patient: common practice, no source
 * @example firstLimb([[true], [false, true], [true, true]]).successes // => 2
 */
export function firstLimb(children: readonly Child[], options: { readonly level?: number } = {}): FirstLimbResult {
  const level = clusteredLevel("firstLimb", children, options);
  const successes = children.filter(([first]) => first).length;
  const { estimate, interval } = wilson(successes, children.length, { level });
  const counts = { children: children.length, successes, trials: children.length };
  return { method: "first limb of each child, wilson", ...counts, level, estimate, interval };
}
