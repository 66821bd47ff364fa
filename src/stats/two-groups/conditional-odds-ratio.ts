import { normalQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import { mirrored, noncentralTails, type FixedMargins } from "./noncentral-tails.js";

export const conditionalLimits = ["exact", "midP"] as const;
export type ConditionalLimits = (typeof conditionalLimits)[number];

/** Odds ratio of the first group's success to the second's, given both margins. */
export type ConditionalOddsRatioResult = TwoGroups & {
  readonly method: "conditional";
  readonly limits: ConditionalLimits;
  readonly level: number;
  readonly interval: Interval;
} & ({ readonly estimate: number } | NotEstimable);

/**
 * Conditional maximum-likelihood odds ratio, with limits that leave (1 - level)/2 in each tail of the noncentral
 * hypergeometric distribution: exact, or mid-P when the observed table counts for half.
 * @param groups successes of trials in each group
 * @param options level, default 0.95; limits, "exact" (default) or "midP"
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Cornfield 1956, Proc Third Berkeley Symp 4:135-148; Fisher 1935, J R Stat Soc 98:39-54; Agresti 2002, Categorical Data
 *   Analysis, sections 3.5 and 3.6; Fagerland, Lydersen, Laake 2015, Stat Methods Med Res 24:224-254 (both limits)
 * @example conditionalOddsRatio({ first: { successes: 21, trials: 23 }, second: { successes: 15, trials: 18 } }).interval // => { low: 0.2089, high: 27.5522 }
 */
export function conditionalOddsRatio(
  { first, second }: TwoGroups,
  options: { readonly level?: number; readonly limits?: ConditionalLimits } = {},
): ConditionalOddsRatioResult {
  requireTwoGroups("conditionalOddsRatio", { first, second });
  requireOptions("conditionalOddsRatio", options, ["level", "limits"]);
  const { level = 0.95, limits = "exact" } = options;
  requireLevel("conditionalOddsRatio", level);
  if (!conditionalLimits.includes(limits))
    throw new RangeError(`conditionalOddsRatio: limits must be "exact" or "midP", got ${limits}`);

  const table = { x: first.successes, m: first.trials, n: second.trials, k: first.successes + second.successes };
  const asked = { method: "conditional", first, second, limits, level } as const;
  if (table.k === 0 || table.k === table.m + table.n)
    return {
      ...asked,
      estimate: null,
      because: `every case was a ${table.k === 0 ? "failure" : "success"}, so the table says nothing about the odds ratio`,
      interval: { low: 0, high: Infinity },
    };
  const logEstimate = maximumLikelihood(table);
  const share = limits === "exact" ? 1 : 0.5;
  const low = Math.exp(lowerLimit(table, (1 - level) / 2, share));
  const high = Math.exp(-lowerLimit(mirrored(table), (1 - level) / 2, share));
  return { ...asked, estimate: Math.exp(logEstimate), interval: { low, high } };
}

/** Logarithm of the odds ratio at which the observed cell is the expected one: -Infinity and Infinity at the ends. */
function maximumLikelihood(table: FixedMargins): number {
  const { x, m, n, k } = table;
  if (x === Math.max(0, k - n)) return -Infinity;
  if (x === Math.min(m, k)) return Infinity;
  return rootInLogOdds(startingLogOdds(table), (oddsRatio) => {
    const { mean, variance } = noncentralTails(table, oddsRatio, 1);
    return { short: x - mean, slope: variance };
  });
}

/** Logarithm of the odds ratio at which a cell as large as the observed one has probability `tail`. */
function lowerLimit(table: FixedMargins, tail: number, share: number): number {
  const { x, m, n, k } = table;
  if (x === Math.max(0, k - n)) return -Infinity;
  const spread = Math.sqrt(1 / (x + 0.5) + 1 / (m - x + 0.5) + 1 / (k - x + 0.5) + 1 / (n - k + x + 0.5));
  const logTail = Math.log(tail);
  return rootInLogOdds(startingLogOdds(table) + normalQuantile(tail) * spread, (oddsRatio) => {
    const { mean, atLeast } = noncentralTails(table, oddsRatio, share);
    return { short: logTail - Math.log(atLeast.probability), slope: atLeast.mean - mean };
  });
}

function startingLogOdds({ x, m, n, k }: FixedMargins): number {
  return Math.log(((x + 0.5) * (n - k + x + 0.5)) / ((m - x + 0.5) * (k - x + 0.5)));
}

/**
 * Root of a rising function of the log odds ratio by Newton steps of at most 3, halving the bracket when one leaves it. The
 * functions are close to straight, so the step after one below 1e-8 changes nothing a double can hold.
 */
function rootInLogOdds(start: number, at: (oddsRatio: number) => { short: number; slope: number }): number {
  let low = -Infinity;
  let high = Infinity;
  let logOdds = start;
  for (let turn = 0; turn < 200; turn++) {
    const { short, slope } = at(Math.exp(logOdds));
    if (short > 0) low = logOdds;
    else high = logOdds;
    const step = slope > 0 ? Math.max(-3, Math.min(3, short / slope)) : Math.sign(short) * 3;
    const next = logOdds + step;
    if (Math.abs(step) < 1e-8) return next;
    logOdds = next > low && next < high ? next : (low + high) / 2;
  }
  throw new RangeError(`conditionalOddsRatio: no limit found near a log odds ratio of ${logOdds}`);
}
