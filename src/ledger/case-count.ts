import type { Judgement } from "../plan/judge.js";
import type { CaseCount, LedgerCase } from "./types.js";

/**
 * Counts cases by a judgement. A case still asked is a trial and no success, and is listed, so that bounds can be given.
 * @throws RangeError when a case stands twice or is judged unknown: it should have left the ladder before
 */
export function caseCount(
  cases: readonly LedgerCase[],
  judgementOf: (one: LedgerCase) => Judgement | undefined,
  unit: "limb" | "child",
): CaseCount {
  if (new Set(cases.map(({ id }) => id)).size !== cases.length)
    throw new RangeError("caseCount: a case may stand once only");
  const ids = (wanted: Judgement): string[] => cases.filter((one) => judgementOf(one) === wanted).map(({ id }) => id);
  const [succeeded, failed, asked] = [ids("yes"), ids("no"), ids("asked")];
  if (succeeded.length + failed.length + asked.length !== cases.length)
    throw new RangeError("caseCount: every case must be judged yes, no or asked");
  return { unit, successes: succeeded.length, trials: cases.length, succeeded, failed, asked };
}
