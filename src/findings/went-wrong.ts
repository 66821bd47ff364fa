import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import type { Plan } from "../plan/types.js";
import { exactOneSided } from "../stats/one-proportion/exact-one-sided.js";
import { rate, type RateOptions } from "./rate.js";
import type { ComplicationRow, Findings } from "./types.js";

/** Failures one line each, and complications with the rows that are zero. */
export function wentWrong(
  { analysed, eligible }: { readonly analysed: readonly LedgerCase[]; readonly eligible: readonly LedgerCase[] },
  plan: Plan,
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Findings["wentWrong"] {
  const failures = analysed
    .filter((one) => judgementOf(one) === "no")
    .map(({ id, grade, firstTechnique, finalTechnique, operator, ageYears, followUpMonths, reason }) => ({
      ...{ id, grade, firstTechnique, finalTechnique, operator, followUpMonths, reason },
      // Years are enough for a table that is printed.
      ageYears: ageYears === null ? null : Math.floor(ageYears),
    }));
  return { failures, complications: complications(eligible, plan, options) };
}

function complications(
  cases: readonly LedgerCase[],
  plan: Plan,
  options: RateOptions,
): Findings["wentWrong"]["complications"] {
  if (plan.complications === undefined) return { estimate: null, because: "the plan names no column of complications" };
  const recorded = cases.filter((one) => one.complications !== null);
  if (recorded.length === 0) return { estimate: null, because: "complications were recorded for no case" };
  const seen = recorded.flatMap((one) => one.complications!.map((item) => item.toLowerCase()));
  const kinds = [...new Set([...plan.complications.searched.map((item) => item.toLowerCase()), ...seen])];
  const row = (name: string, has: (items: readonly string[]) => boolean): ComplicationRow => {
    const one = rate(recorded, ({ complications: items }) => (has(items!) ? "yes" : "no"), {
      unit: options.unit,
      level: options.level,
    });
    const { successes, trials } = one.count;
    return { name, rate: one, upperLimit: exactOneSided(successes, trials, { level: options.level }).upper };
  };
  return [
    row("any complication", (items) => items.length > 0),
    ...kinds.map((kind) => row(kind, (items) => items.some((item) => item.toLowerCase() === kind))),
  ];
}
