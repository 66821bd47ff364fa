import { requireNumbers } from "../guards.js";
import { kruskalWallis } from "../tables/kruskal-wallis.js";
import type { NotEstimable } from "../types.js";

export interface SeveralGroups {
  readonly method: "Kruskal-Wallis, chi-square approximation";
  readonly n: readonly number[];
  /** Corrected for ties. */
  readonly statistic: number;
  readonly df: number;
  readonly p: number;
}

/**
 * Large-sample rank test whether a measurement differs between several groups (Kruskal-Wallis).
 *
 * @param groups two or more, of finite numbers; empty ones do not count
 * @returns the test, or null with the reason when fewer than two groups have values or all values are equal
 * @throws RangeError when there are fewer than two groups or a value is not finite
 * @see Kruskal and Wallis 1952, J Am Stat Assoc 47:583-621
 * @example severalGroups([[1, 2], [3, 4], [5, 6]]).statistic // => 4.571428571428571
 */
export function severalGroups(groups: readonly (readonly number[])[]): SeveralGroups | NotEstimable {
  if (groups.length < 2) throw new RangeError(`severalGroups: groups must be at least 2, got ${groups.length}`);
  groups.forEach((values, at) => requireNumbers("severalGroups", `groups[${at}]`, values, 0));
  const filled = groups.filter((values) => values.length > 0);
  if (filled.length < 2) return { estimate: null, because: "fewer than two groups have values" };
  const columns = new Map([...new Set(filled.flat())].sort((a, b) => a - b).map((value, at) => [value, at]));
  if (columns.size === 1) return { estimate: null, because: "all values are equal" };

  const table = filled.map((values) => {
    const counts = new Array<number>(columns.size).fill(0);
    for (const value of values) counts[columns.get(value)!]!++;
    return counts;
  });
  const test = kruskalWallis(table);
  if (test.p === null) return { estimate: null, because: test.because };
  const { statistic, df, p } = test;
  return {
    method: "Kruskal-Wallis, chi-square approximation",
    n: groups.map(({ length }) => length),
    statistic,
    df,
    p,
  };
}
