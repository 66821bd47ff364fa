import type { Judgement } from "../plan/judge.js";
import type { SuccessKind } from "../plan/types.js";
import type { Entry } from "./ladder.js";
import type { LedgerCase } from "./types.js";

/**
 * Makes the child the unit: a child stands with the limb of the highest grade (the earlier one where equal) and succeeds
 * only when every limb that stayed in did. A child is excluded or lost only when all its limbs are.
 */
export function asChildren(
  limbs: readonly LedgerCase[],
  entries: ReadonlyMap<string, Entry>,
  grades: readonly string[],
): { readonly cases: LedgerCase[]; readonly entries: Map<string, Entry> } {
  const byChild = new Map<string, LedgerCase[]>();
  for (const limb of limbs) byChild.set(limb.child, [...(byChild.get(limb.child) ?? []), limb]);
  const cases: LedgerCase[] = [];
  const childEntries = new Map<string, Entry>();
  for (const all of byChild.values()) {
    const staying = all.filter(({ id }) => entries.get(id)!.excluded === null && !entries.get(id)!.lost);
    const eligible = all.filter(({ id }) => entries.get(id)!.excluded === null);
    const kept = staying.length > 0 ? staying : eligible.length > 0 ? eligible : all;
    const index = kept.toSorted((a, b) => rank(b, grades) - rank(a, grades) || a.order - b.order)[0]!;
    cases.push({ ...index, success: together(kept), complications: allComplications(kept) });
    childEntries.set(index.id, { ...entries.get(index.id)!, asked: kept.some(({ id }) => entries.get(id)!.asked) });
  }
  return { cases, entries: childEntries };
}

function rank(one: LedgerCase, grades: readonly string[]): number {
  return one.grade === null ? -1 : grades.indexOf(one.grade);
}

function together(limbs: readonly LedgerCase[]): LedgerCase["success"] {
  const kinds = Object.keys(limbs[0]!.success) as SuccessKind[];
  const worst = (kind: SuccessKind): Judgement =>
    (["no", "asked", "unknown"] as const).find((answer) => limbs.some((limb) => limb.success[kind] === answer)) ??
    "yes";
  return Object.fromEntries(kinds.map((kind) => [kind, worst(kind)]));
}

function allComplications(limbs: readonly LedgerCase[]): readonly string[] | null {
  if (limbs.some(({ complications }) => complications === null)) return null;
  return [...new Set(limbs.flatMap(({ complications }) => complications!))];
}
