import { requireOptions } from "../guards.js";
import { fisherTails } from "./fisher-tails.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import {
  requireUnconditional,
  unconditionalP,
  type Alternative,
  type TotalSlice,
  type UnconditionalP,
} from "./unconditional-p.js";

export const boschlooConventions = ["doubled", "pointProbability"] as const;
export type BoschlooConvention = (typeof boschlooConventions)[number];

/** Boschloo's p value and the common success probability at which it is reached. */
export interface BoschlooResult extends TwoGroups, UnconditionalP {
  readonly method: "boschloo";
  readonly alternative: Alternative;
  /** What two-sided means: the smaller one-sided p doubled, or tables ordered by Fisher's `pointProbability`. */
  readonly convention: BoschlooConvention;
}

/** Computed p values closer than this, relatively, belong to tables that are equally extreme. */
const tie = 1 + 1e-10;
/** Within one total, tables this close in probability count as equally likely, as in `fisherExact`. */
const equallyLikely = 1 + 1e-7;

/**
 * Boschloo's unconditional exact test: Fisher's p value as the statistic, its probability maximised over the common success
 * probability, so never larger than Fisher's p of the same side. The maximum is certified to a relative 1e-12.
 * @param groups successes of trials in each group, at most 5,000 trials together
 * @param options alternative: "twoSided" (default), "less" or "greater" for the first group's success; convention of
 *   "twoSided": "doubled" (default: the smaller one-sided p twice) or "pointProbability", which differ when the groups are
 *   unequal in size
 * @throws RangeError when a count or an option is out of range; TypeError when an option is unknown
 * @see Boschloo 1970, Stat Neerl 24:1-9; Lydersen, Fagerland, Laake 2009, Stat Med 28:1159-1175
 * @example boschloo({ first: { successes: 7, trials: 15 }, second: { successes: 12, trials: 15 } }, { alternative: "less" }).p // => 0.03410915
 */
export function boschloo(
  { first, second }: TwoGroups,
  options: { readonly alternative?: Alternative; readonly convention?: BoschlooConvention } = {},
): BoschlooResult {
  requireTwoGroups("boschloo", { first, second });
  requireOptions("boschloo", options, ["alternative", "convention"]);
  const { alternative = "twoSided", convention = "doubled" } = options;
  requireUnconditional("boschloo", { first, second }, alternative);
  if (!boschlooConventions.includes(convention))
    throw new RangeError(`boschloo: convention must be "doubled" or "pointProbability", got ${convention}`);
  const asked = { method: "boschloo", first, second, alternative, convention } as const;
  if (alternative !== "twoSided" || convention === "pointProbability")
    return { ...asked, ...ofSide({ first, second }, alternative) };
  const less = ofSide({ first, second }, "less");
  const greater = ofSide({ first, second }, "greater");
  const { p, nuisance } = less.p < greater.p ? less : greater;
  return { ...asked, p: Math.min(1, 2 * p), nuisance };
}

function ofSide({ first, second }: TwoGroups, alternative: Alternative): UnconditionalP {
  const { successes: a, trials: m } = first;
  const { successes: c, trials: n } = second;
  const { pointProbability, less, greater } = fisherTails(a, m - a, c, n - c);
  const rejected = {
    twoSided: (slice: TotalSlice) => unlikeliest(slice, pointProbability * tie),
    less: ({ probabilities }: TotalSlice) => lowerTail(probabilities, less * tie),
    greater: ({ probabilities }: TotalSlice) => lowerTail(probabilities.toReversed(), greater * tie),
  }[alternative];
  return unconditionalP({ first, second }, rejected);
}

/** The largest tail probability up to the limit, adding cells from the first on. */
function lowerTail(probabilities: Float64Array, limit: number): number {
  let sum = 0;
  for (const probability of probabilities) {
    if (sum + probability > limit) return sum;
    sum += probability;
  }
  return 1;
}

/** The largest point-probability p up to the limit, adding cells from both ends, the unlikelier first, ties together. */
function unlikeliest({ probabilities }: TotalSlice, limit: number): number {
  let low = 0;
  let high = probabilities.length - 1;
  let sum = 0;
  while (low <= high) {
    const likely = Math.min(probabilities[low]!, probabilities[high]!) * equallyLikely;
    let withTies = sum;
    while (low <= high && probabilities[low]! <= likely) withTies += probabilities[low++]!;
    while (low <= high && probabilities[high]! <= likely) withTies += probabilities[high--]!;
    if (withTies > limit) return sum;
    sum = withTies;
  }
  return 1;
}
