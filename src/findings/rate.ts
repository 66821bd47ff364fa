import { caseCount } from "../ledger/case-count.js";
import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { clopperPearson } from "../stats/clopper-pearson.js";
import type { Count } from "../stats/types.js";
import { wilson } from "../stats/wilson.js";
import type { Rate } from "./types.js";

export interface RateOptions {
  readonly unit: "limb" | "child";
  readonly level: number;
  /** Cases that may still leave (true) or, with a grade or a technique still asked, join the count. */
  readonly mayLeave?: (one: LedgerCase) => boolean;
  readonly mayJoin?: readonly LedgerCase[];
}

/** The rate of a judgement among cases, with its intervals; only bounds while a question on it is open. */
export function rate(
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  { unit, level, mayLeave = () => false, mayJoin = [] }: RateOptions,
): Rate {
  const count = caseCount(cases, judgementOf, unit);
  const floating = [...cases.filter((one) => mayLeave(one)), ...mayJoin];
  if (count.asked.length > 0 || floating.length > 0) {
    const open = new Set([...count.asked, ...floating.map(({ id }) => id)]).size;
    const bounds = {
      low: extreme(cases, judgementOf, mayLeave, mayJoin, "no"),
      high: extreme(cases, judgementOf, mayLeave, mayJoin, "yes"),
    };
    return { ...undetermined(count, level), because: `questions are open on ${open} of its cases`, bounds };
  }
  if (count.trials === 0) return { ...undetermined(count, level), because: "no cases" };
  const { successes, trials } = count;
  return {
    count,
    estimate: successes / trials,
    level,
    wilson: wilson(successes, trials, { level }).interval,
    wilson50: wilson(successes, trials, { level: 0.5 }).interval,
    exact: clopperPearson(successes, trials, { level }).interval,
  };
}

function undetermined(count: Rate["count"], level: number): Rate {
  return { count, estimate: null, level, wilson: null, wilson50: null, exact: null };
}

/** The count when every open question is answered towards one end. */
function extreme(
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  mayLeave: (one: LedgerCase) => boolean,
  mayJoin: readonly LedgerCase[],
  end: "yes" | "no",
): Count {
  let successes = 0;
  let trials = 0;
  const settle = (one: LedgerCase, optional: boolean): void => {
    const judged = judgementOf(one);
    const answer = judged === "asked" ? end : judged;
    if (optional && answer !== end) return;
    trials++;
    if (answer === "yes") successes++;
  };
  for (const one of cases) settle(one, mayLeave(one));
  for (const one of mayJoin) settle(one, true);
  return { successes, trials };
}
