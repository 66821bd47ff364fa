import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { exactCommonOddsRatio } from "../stats/strata/exact-common-odds-ratio.js";
import { mantelHaenszel } from "../stats/strata/mantel-haenszel.js";
import { contrast, countOf } from "./contrast.js";
import type { RateOptions } from "./rate.js";
import type { Comparison, GradeContrast } from "./types.js";

/**
 * Closed against open by the technique tried first: all cases together, within each grade, and over the grades in which both
 * were used. Assisted-first cases stand apart.
 */
export function comparison(
  cases: readonly LedgerCase[],
  grades: readonly string[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): Comparison {
  const compared = cases.filter(({ firstTechnique }) => firstTechnique === "closed" || firstTechnique === "open");
  const crude = contrast(compared, judgementOf, options);
  const byGrade = grades.map((grade): GradeContrast => {
    const within = contrast(
      compared.filter((one) => one.grade === grade),
      judgementOf,
      options,
    );
    return { grade, ...within, overlap: within.closed.count.trials > 0 && within.open.count.trials > 0 };
  });
  return {
    by: "first technique",
    crude,
    grades: byGrade,
    withoutOverlap: byGrade
      .filter(({ overlap, closed, open }) => !overlap && closed.count.trials + open.count.trials > 0)
      .map(({ grade }) => grade),
    ...overGrades(byGrade, options.level),
    leftOut: leftOut(cases),
  };
}

function overGrades(
  byGrade: readonly GradeContrast[],
  level: number,
): Pick<Comparison, "mantelHaenszel" | "exactCommon" | "standardised"> {
  const both = byGrade.filter(({ overlap }) => overlap);
  const because =
    both.length === 0
      ? "in no grade were both techniques used"
      : both.some(({ closed, open }) => closed.bounds ?? open.bounds)
        ? "questions are open on some of these cases"
        : undefined;
  if (because !== undefined) {
    const none = { estimate: null, because } as const;
    return { mantelHaenszel: none, exactCommon: none, standardised: none };
  }
  const strata = both.map(({ closed, open }) => ({ first: countOf(closed), second: countOf(open) }));
  const pooled = mantelHaenszel(strata, { level });
  const exact = exactCommonOddsRatio(strata, { level });
  return {
    mantelHaenszel: {
      oddsRatio: pooled.oddsRatio,
      oddsRatioInterval: limits(pooled.interval),
      difference: pooled.difference,
      differenceInterval: limits(pooled.differenceInterval),
      differenceInterval50: limits(mantelHaenszel(strata, { level: 0.5 }).differenceInterval),
      p: pooled.p,
      ...(pooled.because === undefined ? {} : { because: pooled.because }),
    },
    exactCommon:
      exact.oddsRatio === null
        ? { estimate: null, because: exact.because }
        : { estimate: exact.oddsRatio, interval: exact.interval, p: exact.p },
    standardised: standardised(both),
  };
}

/** Both techniques' rates in a series with the grade mix of all compared cases. */
function standardised(both: readonly GradeContrast[]): Comparison["standardised"] {
  const size = ({ closed, open }: GradeContrast): number => closed.count.trials + open.count.trials;
  const total = both.reduce((sum, grade) => sum + size(grade), 0);
  const mixed = (technique: "closed" | "open"): number =>
    both.reduce((sum, grade) => sum + (size(grade) / total) * grade[technique].estimate!, 0);
  const [closed, open] = [mixed("closed"), mixed("open")];
  return { closed, open, difference: closed - open };
}

function limits({
  low,
  high,
}: {
  readonly low: number | null;
  readonly high: number | null;
}): { low: number; high: number } | null {
  return low === null || high === null ? null : { low, high };
}

function leftOut(cases: readonly LedgerCase[]): Comparison["leftOut"] {
  const groups = [
    {
      reason: "treated with assistance first",
      takes: ({ firstTechnique }: LedgerCase) => firstTechnique === "assisted",
    },
    {
      reason: "first technique still asked",
      takes: ({ firstTechnique, techniqueAsked }: LedgerCase) => firstTechnique === null && techniqueAsked,
    },
    {
      reason: "first technique not recorded",
      takes: ({ firstTechnique, techniqueAsked }: LedgerCase) => firstTechnique === null && !techniqueAsked,
    },
  ];
  return groups
    .map(({ reason, takes }) => ({ reason, cases: cases.filter(takes).map(({ id }) => id) }))
    .filter((group) => group.cases.length > 0);
}
