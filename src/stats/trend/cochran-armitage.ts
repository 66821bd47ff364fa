import { normalUpper } from "../../numeric/normal.js";
import { requireOptions } from "../guards.js";
import { deviations, scaledScores } from "../tables/scores.js";
import { requireTrend } from "./trend-guard.js";
import type { Count } from "../types.js";

interface TrendInput {
  readonly method: "Cochran-Armitage";
  readonly groups: readonly Count[];
  readonly scores: readonly number[];
}

export interface CochranArmitageResult extends TrendInput {
  /** Positive when the share of successes rises with the score. */
  readonly z: number;
  /** Two-sided, without continuity correction. */
  readonly p: number;
}

/** All cases alike in outcome or in score: there is no trend to test. */
export interface NoTrend extends TrendInput {
  readonly z: null;
  readonly p: null;
  readonly because: string;
}

/**
 * Large-sample test for a linear trend of proportions over ordered groups.
 *
 * @param groups successes of trials, in order; a group may be empty (0 of 0) and keeps its score
 * @param options.scores one number a group; default 1, 2, 3, ...
 * @throws RangeError when a count or a score is out of range, or fewer than two groups are given
 * @see Cochran 1954, Biometrics 10:417-451, section 6.2; Armitage 1955, Biometrics 11:375-386 (variance with N, not N - 1)
 * @example cochranArmitage([{ successes: 9, trials: 9 }, { successes: 6, trials: 11 }]).z // => -2.335497
 */
export function cochranArmitage(
  groups: readonly Count[],
  options: { readonly scores?: readonly number[] } = {},
): CochranArmitageResult | NoTrend {
  requireOptions("cochranArmitage", options, ["scores"]);
  const scores = options.scores ?? groups.map((_, i) => i + 1);
  requireTrend("cochranArmitage", groups, scores);

  const input = { method: "Cochran-Armitage", groups, scores } as const;
  const sum = (term: (count: Count, i: number) => number): number =>
    groups.reduce((all, count, i) => all + term(count, i), 0);
  const total = sum((count) => count.trials);
  const successes = sum((count) => count.successes);
  const trials = groups.map((count) => count.trials);
  const around = deviations(scaledScores(scores), trials);
  const spread = sum((count, i) => count.trials * around[i]! ** 2);
  if (successes === 0 || successes === total)
    return { ...input, z: null, p: null, because: "all cases had the same outcome" };
  if (spread === 0) return { ...input, z: null, p: null, because: "all cases have the same score" };

  const share = successes / total;
  const excess = sum((count, i) => (count.successes - count.trials * share) * around[i]!);
  const z = excess / Math.sqrt(share * (1 - share) * spread);
  return { ...input, z, p: 2 * normalUpper(Math.abs(z)) };
}
