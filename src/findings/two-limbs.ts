import type { LedgerCase } from "../ledger/types.js";
import type { Judgement } from "../plan/judge.js";
import { clusteredWilson } from "../stats/clustered/clustered-wilson.js";
import type { NotEstimable } from "../stats/types.js";
import { rate, type RateOptions } from "./rate.js";
import type { TwoLimbs } from "./types.js";

/** The rate when limbs of one child are not taken for independent: per child, first limb only, full dependence. */
export function twoLimbs(
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  options: RateOptions,
): TwoLimbs | NotEstimable {
  if (options.unit === "child") return { estimate: null, because: "the child is the unit already" };
  const byChild = new Map<string, LedgerCase[]>();
  for (const one of cases) byChild.set(one.child, [...(byChild.get(one.child) ?? []), one]);
  const children = [...byChild.values()];
  const bilateral = children.filter((limbs) => limbs.length > 1).length;
  if (bilateral === 0) return { estimate: null, because: "no child had more than one limb analysed" };
  const perChild: RateOptions = { ...options, unit: "child" };
  const worst = (limbs: readonly LedgerCase[]): Judgement | undefined =>
    (["no", "asked"] as const).find((answer) => limbs.some((limb) => judgementOf(limb) === answer)) ?? "yes";
  const first = children.map((limbs) => limbs.toSorted((a, b) => a.order - b.order)[0]!);
  return {
    children: bilateral,
    perChild: rate(first, ({ child }) => worst(byChild.get(child)!), perChild),
    firstLimb: rate(first, judgementOf, perChild),
    fullDependence: fullDependence(children, judgementOf, options.level),
  };
}

/** All limbs, those of one child taken to tell nothing new. */
function fullDependence(
  children: readonly (readonly LedgerCase[])[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  level: number,
): TwoLimbs["fullDependence"] {
  if (children.flat().some((one) => judgementOf(one) === "asked"))
    return { estimate: null, because: "questions are open on some of these cases" };
  const found = clusteredWilson(
    children.map((limbs) => limbs.map((one) => judgementOf(one) === "yes")),
    { correlation: 1, level },
  );
  if (found.interval === null) return { estimate: null, because: found.because };
  return { effectiveCases: found.effectiveTrials, interval: found.interval };
}
