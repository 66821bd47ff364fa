import { requirePartCount } from "../strata/strata.js";
import type { Count } from "../types.js";

/** Throws unless there are two groups or more with a case among them, each a count with one finite score. */
export function requireTrend(caller: string, groups: readonly Count[], scores: readonly number[]): void {
  if (groups.length < 2) throw new RangeError(`${caller}: there must be at least two groups, got ${groups.length}`);
  groups.forEach((group, i) => requirePartCount(caller, group, `groups[${i}]`));
  if (scores.length !== groups.length)
    throw new RangeError(`${caller}: there must be one score a group (${groups.length}), got ${scores.length}`);
  if (groups.every(({ trials }) => trials === 0))
    throw new RangeError(`${caller}: there must be at least one case, got groups of 0`);
  scores.forEach((score, i) => {
    if (!Number.isFinite(score)) throw new RangeError(`${caller}: scores[${i}] must be a finite number, got ${score}`);
  });
}
