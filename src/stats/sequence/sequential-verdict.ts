import type { SequentialPlan } from "./sequential-plan.js";

export interface SequentialVerdict {
  readonly method: "sequential probability ratio test, item by item";
  readonly plan: SequentialPlan;
  /** One a case: cases and failures so far, and the two lines there. */
  readonly steps: readonly {
    readonly cases: number;
    readonly failures: number;
    readonly acceptAt: number;
    readonly rejectAt: number;
  }[];
  /** The first line reached, and by which case (1-based); "open" while none is. */
  readonly verdict: "acceptable" | "unacceptable" | "open";
  readonly atCase: number | null;
}

/**
 * Where consecutive cases stand between the lines of a sequential plan. The plan must have been set before the cases
 * were looked at; after a line is reached the plan has ended, and further cases are shown but change nothing.
 *
 * @param failed one a case, in the order of treatment
 * @param plan from `sequentialPlan`
 * @see Wald 1947, Sequential Analysis, section 5.3
 * @example sequentialVerdict([true, true, true], { slope: 0.15, acceptIntercept: 2, rejectIntercept: 2 }).atCase // => 3
 */
export function sequentialVerdict(failed: readonly boolean[], plan: SequentialPlan): SequentialVerdict {
  let failures = 0;
  let verdict: SequentialVerdict["verdict"] = "open";
  let atCase: number | null = null;
  const steps = failed.map((failure, index) => {
    failures += failure ? 1 : 0;
    const cases = index + 1;
    const acceptAt = plan.slope * cases - plan.acceptIntercept;
    const rejectAt = plan.slope * cases + plan.rejectIntercept;
    if (verdict === "open" && (failures <= acceptAt || failures >= rejectAt)) {
      verdict = failures <= acceptAt ? "acceptable" : "unacceptable";
      atCase = cases;
    }
    return { cases, failures, acceptAt, rejectAt };
  });
  return { method: "sequential probability ratio test, item by item", plan, steps, verdict, atCase };
}
