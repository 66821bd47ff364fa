import type { CaseRow, CaseTable, Value } from "../cases/types.js";
import { judge, type Judgement } from "../plan/judge.js";
import type { Plan, SuccessKind } from "../plan/types.js";
import { asChildren } from "./as-children.js";
import { ladder, type Entry } from "./ladder.js";
import { ledgerCase, valueFinder } from "./ledger-case.js";
import type { Denominator, Ledger } from "./types.js";

/**
 * Case table and plan become counts with their rows: who entered, who left and why, each denominator the one above minus
 * named leavers, in limbs and in children.
 */
export function buildLedger(table: CaseTable, plan: Plan): Ledger {
  const valueOf = valueFinder(table);
  const ranks = treatmentOrder(table.cases, (row) => valueOf(row, plan.order));
  const limbs = table.cases.map((row, i) => ({ ...ledgerCase(row, plan, valueOf), order: ranks[i]! }));
  const entryOf = new Map(table.cases.map((row, i) => [limbs[i]!.id, entry(plan, (column) => valueOf(row, column))]));
  const { cases, entries } =
    plan.unit === "child" ? asChildren(limbs, entryOf, gradesOf(plan)) : { cases: limbs, entries: entryOf };
  const ladders = plan.success.map(({ kind }): [SuccessKind, readonly Denominator[]] => [
    kind,
    ladder(cases, entries, kind),
  ]);
  return {
    unit: plan.unit,
    grades: gradesOf(plan),
    cases,
    ladders: Object.fromEntries(ladders),
    entryAsked: cases.filter(({ id }) => entries.get(id)!.asked).map(({ id }) => id),
  };
}

function gradesOf(plan: Plan): readonly string[] {
  return plan.grade?.order ?? [];
}

/** Why a case left before it could be judged, if it did. The first exclusion that holds gives the reason. */
function entry(plan: Plan, valueOf: (column: string) => Value): Entry {
  const exclusions = plan.exclusions.map(({ name, rule }) => ({ name, judged: judge(rule, valueOf) }));
  const excluded = exclusions.find(({ judged }) => judged === "yes")?.name ?? null;
  const lost: Judgement = plan.lost === undefined ? "no" : judge(plan.lost, valueOf);
  const asked = excluded === null && (lost === "asked" || exclusions.some(({ judged }) => judged === "asked"));
  return { excluded, lost: lost === "yes", short: shortFollowUp(plan, valueOf), asked };
}

function shortFollowUp(plan: Plan, valueOf: (column: string) => Value): string | null {
  const minimum = plan.followUp?.minimumMonths;
  if (minimum === undefined) return null;
  const value = valueOf(plan.followUp!.column);
  if (value.kind !== "number" || value.bound === "above" || value.number >= minimum) return null;
  return `followed for less than ${minimum} months`;
}

/** Ranks from 1 by date or number of the order column; cases without one keep their place in the file. */
function treatmentOrder(rows: readonly CaseRow[], orderOf: (row: CaseRow) => Value): number[] {
  const keys = rows.map((row) => {
    const value = orderOf(row);
    if (value.kind === "date") return Date.parse(value.iso);
    return value.kind === "number" ? value.number : null;
  });
  const dated = keys
    .flatMap((key, i) => (key === null ? [] : [{ key, i }]))
    .toSorted((a, b) => a.key - b.key || a.i - b.i);
  const places = keys.flatMap((key, i) => (key === null ? [] : [i]));
  const ranks = keys.map((_, i) => i + 1);
  for (const [place, { i }] of dated.entries()) ranks[i] = places[place]! + 1;
  return ranks;
}
