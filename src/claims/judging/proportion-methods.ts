import { exactOneSided } from "../../stats/one-proportion/exact-one-sided.js";
import {
  type ProportionMethod,
  proportionIntervals,
  proportionMethods,
} from "../../stats/one-proportion/proportion-intervals.js";
import type { Interval } from "../../stats/types.js";
import type { IntervalMethod } from "../reading/interval-methods.js";
import { remembered } from "./memory.js";

export interface NamedInterval {
  readonly name: string;
  readonly interval: Interval;
  /** Known to fail with few cases or near 0 and 100%. */
  readonly poor: boolean;
}

/** Methods that papers use often: a print of theirs may also be cut off or short of a digit. */
export const isUsual = ({ name }: NamedInterval): boolean =>
  ["Wilson", "exact (Clopper–Pearson)", "Wald", "Wald, cut at 0 and 100%", "exact one-sided"].includes(name);

const called: Record<IntervalMethod, RegExp> = {
  Wilson: /^Wilson/, exact: /^exact|^mid-p/, "mid-p": /^mid-p/, Jeffreys: /^Jeffreys/, "Agresti–Coull": /^Agresti/, Wald: /^Wald/,
}; // prettier-ignore

/** Whether a paper that names this method may have used this candidate. */
export const goesBy = ({ name }: NamedInterval, method: IntervalMethod): boolean => called[method].test(name);

const names: Record<ProportionMethod, string> = {
  wilson: "Wilson", wilsonContinuity: "Wilson with continuity correction", clopperPearson: "exact (Clopper–Pearson)",
  midP: "mid-p", blaker: "exact (Blaker)", jeffreys: "Jeffreys", agrestiCoull: "Agresti–Coull",
  likelihoodRatio: "likelihood ratio", wald: "Wald", waldContinuity: "Wald with continuity correction",
}; // prettier-ignore

const memory = remembered<readonly NamedInterval[]>();

/** Every interval in common use for one proportion, Wald also as programs print it when cut at 0 and 1. */
export function proportionCandidates(successes: number, trials: number, level: number): readonly NamedInterval[] {
  return memory(`${successes}/${trials}@${level}`, () => {
    const all = proportionIntervals(successes, trials, { level });
    const found = proportionMethods.flatMap((method) => withCut(names[method], all[method], method.startsWith("wald")));
    if (successes > 0 && successes < trials) return found;
    const { lower, upper } = exactOneSided(successes, trials, { level });
    const three = Math.min(1, 3 / trials);
    const none = successes === 0;
    const oneSided = none ? { low: 0, high: upper } : { low: lower, high: 1 };
    const rule = none ? { low: 0, high: three } : { low: 1 - three, high: 1 };
    return [
      ...found,
      { name: "exact one-sided", interval: oneSided, poor: false },
      ...(level === 0.95 ? [{ name: "rule of three (one-sided)", interval: rule, poor: false }] : []),
    ];
  });
}

function withCut(name: string, interval: Interval, poor: boolean): NamedInterval[] {
  const plain = { name, interval, poor };
  if (interval.low >= 0 && interval.high <= 1) return [plain];
  const cut = { low: Math.max(0, interval.low), high: Math.min(1, interval.high) };
  return [plain, { name: `${name}, cut at 0 and 100%`, interval: cut, poor }];
}
