import type { LedgerCase } from "../ledger/types.js";
import { medianInterval } from "../stats/measurements/median-interval.js";
import { quartiles } from "../stats/measurements/quartiles.js";
import type { LossSummary, MotionLoss } from "./types.js";

/**
 * Loss of motion against the other side, children injured on both sides apart.
 * @param options.bothSides children with both sides in the sheet, analysed or not
 */
export function arm(
  cases: readonly LedgerCase[],
  grades: readonly string[],
  { name, level, bothSides }: { readonly name: string; readonly level: number; readonly bothSides: readonly string[] },
): MotionLoss {
  const bilateral = cases.filter(({ child }) => bothSides.includes(child));
  const single = cases.filter(({ child }) => !bothSides.includes(child));
  const pairs = single.flatMap(({ id, grade, motionInjured: injured, motionOther: other }) =>
    injured === null || other === null ? [] : [{ id, grade, injured, other }],
  );
  const measured = new Set(pairs.map(({ id }) => id));
  const losses = pairs.map(({ injured, other }) => other - injured);
  return {
    name,
    pairs,
    loss:
      losses.length === 0
        ? { estimate: null, because: "no case has both sides measured" }
        : { ...summary(losses), interval: medianInterval(losses, { level }).interval },
    byGrade: grades.map((grade) => {
      const within = pairs.filter((pair) => pair.grade === grade);
      const lost = within.map(({ injured, other }) => other - injured);
      return { grade, cases: within.map(({ id }) => id), summary: lost.length === 0 ? null : summary(lost) };
    }),
    bilateral: bilateral.map(({ id }) => id),
    notMeasured: single.filter(({ id }) => !measured.has(id)).map(({ id }) => id),
  };
}

function summary(losses: readonly number[]): LossSummary {
  const { median, q1, q3, low, high } = quartiles(losses);
  return { median, q1, q3, low, high };
}
