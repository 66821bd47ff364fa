import type { Interval } from "../../stats/types.js";
import { halfAddedRatios } from "../../stats/reported/half-added-ratios.js";
import { differenceIntervals } from "../../stats/reported/difference-intervals.js";
import { conditionalOddsRatio } from "../../stats/two-groups/conditional-odds-ratio.js";
import type { TwoGroups } from "../../stats/two-groups/groups.js";
import { agrestiCaffo } from "../../stats/two-groups/agresti-caffo.js";
import { koopman } from "../../stats/two-groups/koopman.js";
import { miettinenNurminen } from "../../stats/two-groups/miettinen-nurminen.js";
import { katz } from "../../stats/two-groups/katz.js";
import { newcombe } from "../../stats/two-groups/newcombe.js";
import { woolf } from "../../stats/two-groups/woolf.js";
import { remembered } from "./memory.js";

export const effectMeasures = ["difference", "odds ratio", "risk ratio"] as const;
export type EffectMeasure = (typeof effectMeasures)[number];

/** One estimate of an effect with one interval, and what gives them. */
export interface EffectCandidate {
  readonly measure: EffectMeasure;
  readonly name: string;
  readonly estimate: number;
  readonly interval: Interval | null;
  readonly poor: boolean;
}

const memory = remembered<readonly EffectCandidate[]>();

/** Difference, odds ratio and risk ratio of two groups with every interval in common use; differences are fractions. */
export function effectCandidates(groups: TwoGroups, level: number): readonly EffectCandidate[] {
  const { first, second } = groups;
  return memory(`${first.successes}/${first.trials}:${second.successes}/${second.trials}@${level}`, () => [
    ...differences(groups, level),
    ...oddsRatios(groups, level),
    ...riskRatios(groups, level),
  ]);
}

function differences(groups: TwoGroups, level: number): EffectCandidate[] {
  const large = differenceIntervals(groups, { level });
  const of = (name: string, interval: Interval, poor = false): EffectCandidate => ({
    measure: "difference", name, estimate: large.estimate, interval, poor,
  }); // prettier-ignore
  return [
    of("Newcombe", newcombe(groups, { level }).interval),
    of("score (Miettinen–Nurminen)", miettinenNurminen(groups, { level }).interval),
    of("Agresti–Caffo", agrestiCaffo(groups, { level }).interval),
    of("Wald", large.wald, true),
    of("Wald with continuity correction", large.waldContinuity, true),
  ];
}

function oddsRatios(groups: TwoGroups, level: number): EffectCandidate[] {
  const found: EffectCandidate[] = [];
  const of = (name: string, estimate: number, interval: Interval | null): void => {
    found.push({ measure: "odds ratio", name, estimate, interval, poor: false });
  };
  const half = halfAddedRatios(groups, { level }).oddsRatio;
  const sample = woolf(groups, { level });
  if (sample.estimate !== null) {
    for (const interval of limits(sample.interval)) of("log odds ratio (Woolf)", sample.estimate, interval);
    of("Woolf limits with 0.5 added, sample odds ratio", sample.estimate, half.interval);
  }
  of("Woolf with 0.5 added to each cell", half.estimate, half.interval);
  for (const kind of ["exact", "midP"] as const) {
    const conditional = conditionalOddsRatio(groups, { level, limits: kind });
    if (conditional.estimate === null) continue;
    const name = kind === "exact" ? "exact limits" : "mid-p limits";
    for (const interval of limits(conditional.interval)) {
      of(`conditional estimate, ${name}`, conditional.estimate, interval);
      if (sample.estimate !== null) of(`sample odds ratio, ${name}`, sample.estimate, interval);
    }
  }
  return found;
}

function riskRatios(groups: TwoGroups, level: number): EffectCandidate[] {
  const found: EffectCandidate[] = [];
  for (const [name, result] of [
    ["log risk ratio (Katz)", katz(groups, { level })],
    ["score (Koopman)", koopman(groups, { level })],
  ] as const) {
    if (result.estimate === null) continue;
    for (const interval of limits(result.interval))
      found.push({ measure: "risk ratio", name, estimate: result.estimate, interval, poor: false });
  }
  const half = halfAddedRatios(groups, { level }).riskRatio;
  found.push({ measure: "risk ratio", name: "log risk ratio with 0.5 added to each cell", ...half, poor: false });
  return found;
}

const limits = (interval: { readonly low: number | null; readonly high: number | null }): Interval[] =>
  interval.low === null || interval.high === null ? [] : [{ low: interval.low, high: interval.high }];
