import { requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";

/** The limbs of one child in the order treated: whether each succeeded. */
export type Child = readonly boolean[];

/** What every analysis of limbs within children repeats. */
export interface ClusteredCount extends Count {
  readonly children: number;
  readonly level: number;
  /** Successes over limbs, or over children where the child is the unit. */
  readonly estimate: number;
}

/** An interval that allows for limbs of one child being alike. */
export interface ClusteredInterval extends ClusteredCount {
  /** How many times the variance is that of as many unrelated limbs. */
  readonly designEffect: number;
  /** Unrelated limbs that would tell as much. */
  readonly effectiveTrials: number;
  readonly interval: Interval;
}

/** The rate stands, but the data leave its interval undefined. */
export interface ClusteredWithoutInterval extends ClusteredCount {
  readonly designEffect: null;
  readonly effectiveTrials: null;
  readonly interval: null;
  readonly because: string;
}

/** Children and their limbs, counted. */
export interface Totals extends Count {
  readonly children: number;
  readonly estimate: number;
  /** Sum of squared numbers of limbs. */
  readonly squares: number;
}

/** Throws unless there is at least one child and each has at least one limb with a known outcome. */
export function requireChildren(caller: string, children: readonly Child[]): void {
  if (children.length === 0) throw new RangeError(`${caller}: children must hold at least one child, got 0`);
  children.forEach((limbs, i) => {
    if (limbs.length === 0) throw new RangeError(`${caller}: children[${i}] must have at least one limb, got 0`);
    for (const limb of limbs)
      if (typeof limb !== "boolean")
        throw new TypeError(`${caller}: children[${i}] must hold true or false for each limb, got ${String(limb)}`);
  });
}

/** Checks the children and the options, and gives the level. */
export function clusteredLevel(
  caller: string,
  children: readonly Child[],
  options: { readonly level?: number },
  known: readonly string[] = ["level"],
): number {
  requireOptions(caller, options, known);
  const { level = 0.95 } = options;
  requireLevel(caller, level);
  requireChildren(caller, children);
  return level;
}

export function successesOf(limbs: Child): number {
  return limbs.filter(Boolean).length;
}

export function totalsOf(children: readonly Child[]): Totals {
  const trials = children.reduce((sum, limbs) => sum + limbs.length, 0);
  const successes = children.reduce((sum, limbs) => sum + successesOf(limbs), 0);
  const squares = children.reduce((sum, limbs) => sum + limbs.length ** 2, 0);
  return { children: children.length, successes, trials, estimate: successes / trials, squares };
}
