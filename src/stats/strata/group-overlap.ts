import { requireStrata, type Stratum } from "./strata.js";

export interface GroupOverlapResult {
  readonly method: "overlap of two groups over strata";
  readonly strata: readonly Stratum[];
  /** Places of the strata with cases of both groups: only they can compare. */
  readonly both: readonly number[];
  readonly firstOnly: readonly number[];
  readonly secondOnly: readonly number[];
  readonly empty: readonly number[];
  /** Cases of each group, and those of them in strata that can compare. */
  readonly cases: {
    readonly first: { readonly comparable: number; readonly all: number };
    readonly second: { readonly comparable: number; readonly all: number };
  };
}

/**
 * Where two groups can be compared at all: the strata (grades) in which both have cases, and how many cases lie there.
 * No overlap means no comparison, whatever the arithmetic gives.
 *
 * @param strata successes of trials in two groups for each stratum; a group may be empty (0 of 0)
 * @throws RangeError when a count is out of range
 * @see common practice, no source
 * @example groupOverlap([{ first: { successes: 9, trials: 9 }, second: { successes: 0, trials: 0 } }]).both // => []
 */
export function groupOverlap(strata: readonly Stratum[]): GroupOverlapResult {
  requireStrata("groupOverlap", strata);
  const places = [...strata.keys()];
  const has = (i: number): [boolean, boolean] => [strata[i]!.first.trials > 0, strata[i]!.second.trials > 0];
  const where = (first: boolean, second: boolean): number[] =>
    places.filter((i) => has(i)[0] === first && has(i)[1] === second);
  const both = where(true, true);
  const cases = (group: "first" | "second"): { readonly comparable: number; readonly all: number } => ({
    comparable: both.reduce((sum, i) => sum + strata[i]![group].trials, 0),
    all: strata.reduce((sum, stratum) => sum + stratum[group].trials, 0),
  });
  return {
    method: "overlap of two groups over strata",
    strata,
    both,
    firstOnly: where(true, false),
    secondOnly: where(false, true),
    empty: where(false, false),
    cases: { first: cases("first"), second: cases("second") },
  };
}
