import fc from "fast-check";
import type { TwoGroups } from "../../../src/stats/two-groups/groups.js";

/** Two groups from successes and trials of the first, then of the second. */
export function groups(a: number, m: number, c: number, n: number): TwoGroups {
  return { first: { successes: a, trials: m }, second: { successes: c, trials: n } };
}

/** Any two groups of at most `most` trials each. */
export function twoGroups(most: number): fc.Arbitrary<TwoGroups> {
  const count = fc
    .integer({ min: 1, max: most })
    .chain((trials) => fc.record({ successes: fc.integer({ min: 0, max: trials }), trials: fc.constant(trials) }));
  return fc.record({ first: count, second: count });
}
