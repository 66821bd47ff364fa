import type { Denominator, LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { medianInterval } from "../stats/measurements/median-interval.js";
import { contrast, countOf } from "./contrast.js";
import { rate, type RateOptions } from "./rate.js";
import { tipping } from "./tipping.js";
import type { Loss } from "./types.js";

/** Who is missing from the analysed cases, and what the rate had been with all of them failed or all succeeded. */
export function loss(
  ladder: readonly Denominator[],
  caseOf: (id: string) => LedgerCase,
  grades: readonly string[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Loss {
  const rung = (name: Denominator["name"]): Denominator => ladder.find((one) => one.name === name)!;
  const left = (name: Denominator["name"]): string[] => rung(name).leavers.flatMap(({ cases }) => cases);
  const missing = new Set([...left("followed"), ...left("analysed")]);
  const eligible = rung("eligible").cases.map(caseOf);
  const analysed = rung("analysed").cases.map(caseOf);
  const hadAll = (answer: "yes" | "no") =>
    rate(eligible, (one) => (missing.has(one.id) ? answer : judgementOf(one)), options);
  const months = analysed.flatMap(({ followUpMonths }) => (followUpMonths === null ? [] : [followUpMonths]));
  return {
    lost: left("followed"),
    notRecorded: left("analysed"),
    analysed: rate(analysed, judgementOf, options),
    worst: hadAll("no"),
    best: hadAll("yes"),
    tipping: overTechniques(
      analysed,
      eligible.filter(({ id }) => missing.has(id)),
      judgementOf,
      options,
    ),
    lostByGrade: grades.map((grade) => {
      const ids = eligible.filter((one) => one.grade === grade).map(({ id }) => id);
      return { grade, lost: ids.filter((id) => missing.has(id)), kept: ids.filter((id) => !missing.has(id)) };
    }),
    followUp:
      months.length === 0
        ? { estimate: null, because: "no length of follow-up was recorded" }
        : {
            cases: months.length,
            median: medianInterval(months).estimate,
            low: months.reduce((low, one) => Math.min(low, one)),
            high: months.reduce((high, one) => Math.max(high, one)),
          },
  };
}

function overTechniques(
  analysed: readonly LedgerCase[],
  missing: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Loss["tipping"] {
  const { closed, open } = contrast(analysed, judgementOf, options);
  if (closed.bounds !== undefined || open.bounds !== undefined)
    return { estimate: null, because: "questions are open on some of these cases" };
  const lost = (technique: "closed" | "open"): string[] =>
    missing.filter(({ firstTechnique }) => firstTechnique === technique).map(({ id }) => id);
  const ids = { closed: lost("closed"), open: lost("open") };
  const found = tipping(
    { name: "closed first", ...countOf(closed), lost: ids.closed.length },
    { name: "open first", ...countOf(open), lost: ids.open.length },
    options.level,
  );
  return "estimate" in found ? found : { ...found, missing: ids };
}
