import { requireRisks } from "./require-risks.js";

/** One case of a series in its order. */
export interface RiskedCase {
  readonly failed: boolean;
  /** Chance of failure expected of such a case, above 0 and below 1: usually that of its grade. */
  readonly risk: number;
}

export interface ObservedMinusExpected {
  readonly method: "cumulative observed minus expected failures";
  /** One a case, in order. */
  readonly steps: readonly {
    readonly failed: boolean;
    readonly risk: number;
    readonly observed: number;
    readonly expected: number;
    /** Observed less expected failures so far: rises when failures outrun what the grades led to expect. */
    readonly excess: number;
    /** Standard deviation of the excess if the expectations are right. */
    readonly standardDeviation: number;
  }[];
}

/**
 * Failures observed less failures expected, case after case, for consecutive cases with known risks.
 *
 * The expectations must come from elsewhere (another series, a published rate) or be said to come from the same cases,
 * where the curve ends at 0 by construction. The standard deviation is for one point looked at, not for a boundary.
 *
 * @param cases in the order of treatment
 * @throws RangeError when a risk is not above 0 and below 1
 * @see Lovegrove et al. 1997, Lancet 350:1128-1130; Poloniecki, Valencia and Littlejohns 1998, BMJ 316:1697-1700
 * @example observedMinusExpected([{ failed: true, risk: 0.2 }, { failed: false, risk: 0.3 }]).steps[1].excess // => 0.5
 */
export function observedMinusExpected(cases: readonly RiskedCase[]): ObservedMinusExpected {
  requireRisks(
    "observedMinusExpected",
    cases.map(({ risk }) => risk),
  );
  let [observed, expected, variance] = [0, 0, 0];
  const steps = cases.map(({ failed, risk }) => {
    observed += failed ? 1 : 0;
    expected += risk;
    variance += risk * (1 - risk);
    return { failed, risk, observed, expected, excess: observed - expected, standardDeviation: Math.sqrt(variance) };
  });
  return { method: "cumulative observed minus expected failures", steps };
}
