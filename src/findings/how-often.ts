import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { cochranArmitage } from "../stats/trend/cochran-armitage.js";
import { exactTrend } from "../stats/trend/exact-trend.js";
import { countOf } from "./contrast.js";
import { rate, type RateOptions } from "./rate.js";
import type { Findings, GradeRate } from "./types.js";

/** Success overall and by grade, with the trend over the grades. */
export function howOften(
  cases: readonly LedgerCase[],
  grades: readonly string[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Findings["howOften"] {
  const stillAsked = cases.filter(({ grade, gradeAsked }) => grade === null && gradeAsked);
  const byGrade = grades.map((grade): GradeRate => {
    const within = cases.filter((one) => one.grade === grade);
    return { grade, rate: rate(within, judgementOf, { ...options, mayJoin: stillAsked }) };
  });
  return {
    overall: rate(cases, judgementOf, options),
    byGrade,
    withoutGrade: cases.filter(({ grade }) => grade === null).map(({ id }) => id),
    trend: trend(byGrade),
  };
}

function trend(byGrade: readonly GradeRate[]): Findings["howOften"]["trend"] {
  if (byGrade.some(({ rate: { bounds } }) => bounds !== undefined))
    return { estimate: null, because: "questions are open on some of these cases" };
  const groups = byGrade.map(({ rate: one }) => countOf(one));
  const trials = groups.reduce((sum, group) => sum + group.trials, 0);
  const successes = groups.reduce((sum, group) => sum + group.successes, 0);
  if (groups.filter((group) => group.trials > 0).length < 2)
    return { estimate: null, because: "fewer than two grades hold cases" };
  if (successes === 0 || successes === trials)
    return { estimate: null, because: `every case was a ${successes === 0 ? "failure" : "success"}` };
  const exact = exactTrend(groups);
  const asymptotic = cochranArmitage(groups);
  if (asymptotic.z === null) return { estimate: null, because: asymptotic.because };
  return {
    exact:
      exact.pointProbability === null ? null : { pointProbability: exact.pointProbability, doubled: exact.doubled },
    asymptotic: { z: asymptotic.z, p: asymptotic.p },
  };
}
