import type { Ledger } from "../ledger/types.js";
import type { SuccessKind } from "../plan/types.js";

/** Successes of cases in one cell of grade x first technique; null where it was not recorded. */
export interface CountRow {
  readonly grade: string | null;
  readonly technique: string | null;
  readonly successes: number;
  readonly cases: number;
}

/** The analysed cases of a ledger as counts only: nothing of a single case is left but that it was counted. */
export function countRows(ledger: Ledger, success: SuccessKind): CountRow[] {
  const analysed = new Set(ledger.ladders[success]!.at(-1)!.cases);
  const cells = new Map<string, CountRow>();
  for (const one of ledger.cases) {
    if (!analysed.has(one.id)) continue;
    if (one.success[success] === "asked" || one.gradeAsked || one.techniqueAsked || ledger.entryAsked.includes(one.id))
      throw new RangeError("countRows: every question about the sheet must be answered before its counts are shared");
    const { grade, firstTechnique: technique } = one;
    const key = JSON.stringify([grade, technique]);
    const held = cells.get(key) ?? { grade, technique, successes: 0, cases: 0 };
    cells.set(key, {
      ...held,
      successes: held.successes + (one.success[success] === "yes" ? 1 : 0),
      cases: held.cases + 1,
    });
  }
  const rank = (order: readonly string[], value: string | null): number =>
    value === null ? order.length : order.indexOf(value);
  return [...cells.values()].toSorted(
    (a, b) =>
      rank(ledger.grades, a.grade) - rank(ledger.grades, b.grade) ||
      rank(["closed", "assisted", "open"], a.technique) - rank(["closed", "assisted", "open"], b.technique),
  );
}
