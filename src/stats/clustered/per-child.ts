import type { Interval } from "../types.js";
import { wilson } from "../wilson.js";
import { clusteredLevel, type Child, type ClusteredCount } from "./children.js";

/** When a child with several limbs counts as a success. */
export const childRules = ["every", "any"] as const;
export type ChildRule = (typeof childRules)[number];

export interface PerChildResult extends ClusteredCount {
  readonly method: "child as unit, wilson";
  readonly rule: ChildRule;
  readonly interval: Interval;
}

/**
 * Success with the child as the unit: of every limb, or of any.
 *
 * @param children for each child, its limbs
 * @param options.rule "every" (default) or "any" limb must have succeeded
 * @param options.level coverage in (0, 1); default 0.95
 * @throws RangeError when there is no child, a child without limb, or the level is out of range; TypeError on another rule
 * @see Wilson 1927, J Am Stat Assoc 22:209-212; the child as unit: common practice, no source
 * @example perChild([[true], [false, true], [true, true]]).successes // => 2
 */
export function perChild(
  children: readonly Child[],
  options: { readonly level?: number; readonly rule?: ChildRule } = {},
): PerChildResult {
  const level = clusteredLevel("perChild", children, options, ["level", "rule"]);
  const { rule = "every" } = options;
  if (!childRules.includes(rule))
    throw new TypeError(`perChild: no rule is named "${String(rule)}" (known: ${childRules.join(", ")})`);
  const successes = children.filter((limbs) => (rule === "every" ? limbs.every(Boolean) : limbs.some(Boolean))).length;
  const { estimate, interval } = wilson(successes, children.length, { level });
  const counts = { children: children.length, successes, trials: children.length };
  return { method: "child as unit, wilson", rule, ...counts, level, estimate, interval };
}
