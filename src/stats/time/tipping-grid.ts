import { requireCount, requireLevel, requireOptions } from "../guards.js";
import type { Count, Interval } from "../types.js";
import { newcombe } from "../two-groups/newcombe.js";
import { fisherExact } from "../two-groups/fisher-exact.js";
import { requireLost } from "./loss-bounds.js";

/** Followed cases of one technique, and how many more were lost. */
export interface FollowedAndLost extends Count {
  readonly lost: number;
}

/** What the comparison would be had so many of the lost cases failed. */
export interface TippingCell {
  readonly lostFailed: { readonly first: number; readonly second: number };
  readonly first: Count;
  readonly second: Count;
  readonly difference: { readonly estimate: number; readonly interval: Interval };
  /** Fisher, by summing the tables no likelier than this one. */
  readonly p: number;
}

export interface TippingGrid {
  readonly method: "tipping grid over lost cases";
  readonly level: number;
  /** Row by row: failures among the lost of the first technique, 0 to all; within a row those of the second. */
  readonly cells: readonly (readonly TippingCell[])[];
}

/** Cells computed at most. */
const mostCells = 10_000;

/**
 * The comparison of two techniques for every number of failures among the lost cases of each: where does the answer tip?
 *
 * @param groups.first successes, trials (followed) and lost
 * @param groups.second successes, trials (followed) and lost
 * @param options.level coverage of the limits of the difference; default 0.95
 * @throws RangeError when a count or the level is out of range or the grid would pass 10,000 cells
 * @see Yan, Lee and Li 2009, J Biopharm Stat 19:1085-1098 (tipping points); difference as Newcombe 1998, method 10
 * @example tippingGrid({ first: { successes: 35, trials: 40, lost: 1 }, second: { successes: 7, trials: 11, lost: 0 } }).cells.length // => 2
 */
export function tippingGrid(
  groups: { readonly first: FollowedAndLost; readonly second: FollowedAndLost },
  options: { readonly level?: number } = {},
): TippingGrid {
  requireOptions("tippingGrid", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("tippingGrid", level);
  for (const name of ["first", "second"] as const) {
    requireCount("tippingGrid", groups[name].successes, groups[name].trials, name);
    requireLost("tippingGrid", `${name}.lost`, groups[name].lost);
  }
  const { first, second } = groups;
  const size = (first.lost + 1) * (second.lost + 1);
  if (size > mostCells) throw new RangeError(`tippingGrid: the grid must hold ${mostCells} cells at most, got ${size}`);
  const cells = upTo(first.lost).map((a) => upTo(second.lost).map((b) => cell(groups, { first: a, second: b }, level)));
  return { method: "tipping grid over lost cases", level, cells };
}

const upTo = (most: number): number[] => Array.from({ length: most + 1 }, (_, index) => index);

function cell(
  groups: { readonly first: FollowedAndLost; readonly second: FollowedAndLost },
  lostFailed: TippingCell["lostFailed"],
  level: number,
): TippingCell {
  const filled = ({ successes, trials, lost }: FollowedAndLost, failed: number): Count => ({
    successes: successes + lost - failed,
    trials: trials + lost,
  });
  const first = filled(groups.first, lostFailed.first);
  const second = filled(groups.second, lostFailed.second);
  const { estimate, interval } = newcombe({ first, second }, { level });
  const p = fisherExact({ first, second }).pointProbability;
  return { lostFailed, first, second, difference: { estimate, interval }, p };
}
