import { requireOptions } from "../guards.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import {
  requireUnconditional,
  unconditionalP,
  type Alternative,
  type TotalSlice,
  type UnconditionalP,
} from "./unconditional-p.js";

/** Barnard's p value and the common success probability at which it is reached. */
export interface BarnardResult extends TwoGroups, UnconditionalP {
  readonly method: "barnard";
  /** Tables are ordered by the pooled z; two-sided by its absolute value. */
  readonly alternative: Alternative;
  /** Pooled z of the observed table: first minus second, 0 when every case had the same outcome. */
  readonly statistic: number;
}

/**
 * Barnard's unconditional exact test with the pooled z as statistic: its probability maximised over the common success
 * probability. The maximum is certified to a relative 1e-12, ties of the statistic are decided in whole numbers.
 * @param groups successes of trials in each group, at most 5,000 trials together
 * @param options alternative: "twoSided" (default), "less" or "greater" for the first group's success
 * @throws RangeError when a count or the alternative is out of range; TypeError when an option is unknown
 * @see Barnard 1947, Biometrika 34:123-138; Suissa, Shuster 1985, J R Stat Soc A 148:317-327 (pooled z); Mehta, Senchaudhuri
 *   2003, Conditional versus unconditional exact tests for comparing two binomials
 * @example barnard({ first: { successes: 7, trials: 15 }, second: { successes: 12, trials: 15 } }, { alternative: "less" }).p // => 0.03410915
 */
export function barnard(
  { first, second }: TwoGroups,
  options: { readonly alternative?: Alternative } = {},
): BarnardResult {
  requireTwoGroups("barnard", { first, second });
  requireOptions("barnard", options, ["alternative"]);
  const { alternative = "twoSided" } = options;
  requireUnconditional("barnard", { first, second }, alternative);
  const m = first.trials;
  const n = second.trials;
  const successes = first.successes + second.successes;
  const deviation = first.successes * n - second.successes * m;
  const spread = successes * (m + n - successes);
  const statistic = spread === 0 ? 0 : deviation * Math.sqrt((m + n) / m / n / spread);
  // "less" of the first group is "greater" with the signs of all deviations changed.
  const sign = alternative === "less" ? -1 : 1;
  const rejected = (slice: TotalSlice): number =>
    alternative === "twoSided"
      ? extreme(slice, m, n, Math.abs(deviation), spread, 1) + extreme(slice, m, n, Math.abs(deviation), spread, -1)
      : extreme(slice, m, n, sign * deviation, spread, sign);
  const everyTable = { p: 1, nuisance: 0 };
  const { p, nuisance } =
    alternative === "twoSided" && deviation === 0 ? everyTable : unconditionalP({ first, second }, rejected);
  return { method: "barnard", first, second, alternative, statistic, p, nuisance };
}

/** Probability, given the total, of the tables whose z times `sign` is at least that of the observed deviation. */
function extreme(
  { successes, low, probabilities }: TotalSlice,
  m: number,
  n: number,
  observed: number,
  observedSpread: number,
  sign: number,
): number {
  const spread = successes * (m + n - successes);
  const last = probabilities.length - 1;
  let sum = 0;
  for (let i = 0; i <= last; i++) {
    const at = sign > 0 ? last - i : i;
    const x = low + at;
    const deviation = sign * (x * n - (successes - x) * m);
    if (!atLeast(deviation, spread, observed, observedSpread)) break;
    sum += probabilities[at]!;
  }
  return Math.min(1, sum);
}

/** deviation / sqrt(spread) >= observed / sqrt(observedSpread), ties exact; without spread a deviation is 0, and so is z. */
function atLeast(deviation: number, spread: number, observed: number, observedSpread: number): boolean {
  if (Math.sign(deviation) !== Math.sign(observed)) return deviation > observed;
  const left = Math.sign(deviation) * deviation ** 2 * observedSpread;
  const right = Math.sign(observed) * observed ** 2 * spread;
  if (Math.abs(left - right) > 1e-12 * Math.abs(right)) return left > right;
  return (
    BigInt(Math.sign(deviation)) * BigInt(deviation) ** 2n * BigInt(observedSpread) >=
    BigInt(Math.sign(observed)) * BigInt(observed) ** 2n * BigInt(spread)
  );
}
