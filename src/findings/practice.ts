import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { caseOrderEffect } from "../stats/sequence/case-order-effect.js";
import { observedMinusExpected } from "../stats/sequence/observed-minus-expected.js";
import type { NotEstimable } from "../stats/types.js";
import { eventsPerCovariate } from "./adjusted.js";
import type { Practice } from "./types.js";

/** Failures in the order of treatment, given grade; the order as a covariate, and no split chosen after looking. */
export function practice(
  cases: readonly LedgerCase[],
  grades: readonly string[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  level: number,
): Practice | NotEstimable {
  const graded = cases.filter(({ grade }) => grade !== null).toSorted((a, b) => a.order - b.order);
  if (graded.some((one) => judgementOf(one) === "asked"))
    return { estimate: null, because: "questions are open on some of these cases" };
  if (graded.length < 2) return { estimate: null, because: "fewer than two cases have a grade" };
  const failed = graded.map((one) => judgementOf(one) === "no");
  const riskOf = new Map(grades.map((grade) => [grade, expectedRisk(graded, failed, grade)]));
  const { steps } = observedMinusExpected(
    graded.map(({ grade }, i) => ({ failed: failed[i]!, risk: riskOf.get(grade!)! })),
  );
  return {
    steps: graded.map(({ id, order, grade }, i) => ({
      id,
      order,
      grade: grade!,
      failed: failed[i]!,
      excess: steps[i]!.excess,
    })),
    expectation:
      "the failure rate of each grade in this series itself, half a failure and half a success added, so the line ends near zero by construction",
    effect: effect(graded, failed, grades, level),
    operators: operators(graded, failed),
    leftOut: cases.filter(({ grade }) => grade === null).map(({ id }) => id),
  };
}

/** Rate of failure in a grade, half a failure and half a success added, so that no grade is expected never or always to fail. */
function expectedRisk(cases: readonly LedgerCase[], failed: readonly boolean[], grade: string): number {
  const within = failed.filter((_, i) => cases[i]!.grade === grade);
  return (within.filter(Boolean).length + 0.5) / (within.length + 1);
}

function effect(
  cases: readonly LedgerCase[],
  failed: readonly boolean[],
  grades: readonly string[],
  level: number,
): Practice["effect"] {
  const found = caseOrderEffect(
    cases.map(({ grade }, i) => ({ succeeded: !failed[i], grade: grade! })),
    { gradeOrder: grades, level, eventsPerCovariate },
  );
  if ("estimate" in found) return found;
  const { estimate, interval } = found.order.oddsRatio;
  return { perCases: found.perCases, estimate, interval, p: found.order.likelihoodRatio.p };
}

function operators(cases: readonly LedgerCase[], failed: readonly boolean[]): Practice["operators"] {
  const names = [...new Set(cases.flatMap(({ operator }) => (operator === null ? [] : [operator])))].toSorted();
  return names.map((operator) => {
    const mine = cases.map((one, i) => ({ one, failed: failed[i]! })).filter(({ one }) => one.operator === operator);
    return {
      operator,
      cases: mine.map(({ one }) => one.id),
      failed: mine.filter((entry) => entry.failed).map(({ one }) => one.id),
    };
  });
}
