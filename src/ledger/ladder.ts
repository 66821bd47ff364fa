import type { SuccessKind } from "../plan/types.js";
import type { Denominator, DenominatorName, Leavers, LedgerCase } from "./types.js";

export interface Entry {
  /** Reason of the first exclusion that holds. */
  readonly excluded: string | null;
  readonly lost: boolean;
  /** Reason when the follow-up is known to be shorter than the plan asks for. */
  readonly short: string | null;
  /** A question on entry is open. */
  readonly asked: boolean;
}

/**
 * The ladder of denominators of one kind of success: screened, eligible, followed, analysed.
 */
export function ladder(
  cases: readonly LedgerCase[],
  entries: ReadonlyMap<string, Entry>,
  kind: SuccessKind,
): Denominator[] {
  const entryOf = (one: LedgerCase): Entry => entries.get(one.id)!;
  const judged = (one: LedgerCase): boolean => one.success[kind] !== undefined && one.success[kind] !== "unknown";
  // A failure seen early counts, however short the follow-up; a reduction is judged on the table, before anybody is lost.
  const settled = (one: LedgerCase): boolean => one.success[kind] === "no" || (kind === "technical" && judged(one));
  const leaves = ({ lost, short }: Entry): string | null => (lost ? "lost to follow-up" : short);
  const steps: { name: DenominatorName; reasonToLeave: (one: LedgerCase) => string | null }[] = [
    { name: "eligible", reasonToLeave: (one) => entryOf(one).excluded },
    {
      name: "followed",
      reasonToLeave: (one) => (settled(one) ? null : leaves(entryOf(one))),
    },
    { name: "analysed", reasonToLeave: (one) => (judged(one) ? null : "outcome not recorded") },
  ];
  const rungs: Denominator[] = [rung("screened", cases, [])];
  let remaining = cases;
  for (const { name, reasonToLeave } of steps) {
    const staying = remaining.filter((one) => reasonToLeave(one) === null);
    rungs.push(rung(name, staying, leavers(remaining, staying, reasonToLeave)));
    remaining = staying;
  }
  return rungs;
}

function rung(name: DenominatorName, cases: readonly LedgerCase[], leaving: readonly Leavers[]): Denominator {
  return { name, cases: cases.map(({ id }) => id), children: childrenOf(cases), leavers: leaving };
}

function leavers(
  before: readonly LedgerCase[],
  staying: readonly LedgerCase[],
  reasonToLeave: (one: LedgerCase) => string | null,
): Leavers[] {
  const stayingChildren = new Set(childrenOf(staying));
  const byReason = new Map<string, LedgerCase[]>();
  for (const one of before) {
    const reason = reasonToLeave(one);
    if (reason === null) continue;
    const gone = byReason.get(reason);
    if (gone) gone.push(one);
    else byReason.set(reason, [one]);
  }
  const counted = new Set<string>();
  return [...byReason].map(([reason, gone]) => {
    // A child whose limbs leave for two reasons is counted once, under the first, so that the column adds up.
    const children = childrenOf(gone).filter((child) => !stayingChildren.has(child) && !counted.has(child));
    for (const child of children) counted.add(child);
    return { reason, cases: gone.map(({ id }) => id), children };
  });
}

function childrenOf(cases: readonly LedgerCase[]): string[] {
  return [...new Set(cases.map(({ child }) => child))];
}
