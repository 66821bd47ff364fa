import type { CaseRow, CaseTable, Value } from "../cases/types.js";
import { judge, type Judgement } from "../plan/judge.js";
import type { Plan, SuccessKind, Technique, TechniquePlan } from "../plan/types.js";
import { gradeAtCutPoints } from "./grade-at-cut-points.js";
import type { LedgerCase } from "./types.js";

const nothing: Value = { kind: "missing", reason: "blank" };

/** Finds a case's value by the name of its column. */
export function valueFinder(table: CaseTable): (row: CaseRow, column: string | undefined) => Value {
  const places = new Map(table.columns.map(({ name }, i) => [name, i]));
  return (row, column) => (column === undefined ? nothing : (row.values[places.get(column) ?? -1] ?? nothing));
}

/** Everything the counts need of one row, in the words of the house. `order` is set when all rows are known. */
export function ledgerCase(
  row: CaseRow,
  plan: Plan,
  valueOf: (row: CaseRow, column: string | undefined) => Value,
): LedgerCase {
  const value = (column: string | undefined): Value => valueOf(row, column);
  const judged = (rule: Parameters<typeof judge>[0]): Judgement => judge(rule, value);
  const measurementColumn =
    plan.measurement?.column ?? (plan.grade && "measurement" in plan.grade ? plan.grade.measurement : undefined);
  const measurement = exactNumber(value(measurementColumn));
  const byMeasurement = gradeByMeasurement(plan, measurement);
  const first = techniqueOf(plan.technique, value(plan.technique?.first));
  const final = plan.technique?.final === undefined ? first : techniqueOf(plan.technique, value(plan.technique.final));
  const converted = first === "closed" && final !== null && final !== "closed";
  const fails = converted && plan.technique!.conversionFails.includes(final as "assisted" | "open");
  const success = plan.success.map(({ kind, rule }): [SuccessKind, Judgement] => [kind, fails ? "no" : judged(rule)]);
  const complications = value(plan.complications?.column);
  return {
    id: row.id,
    child: row.child,
    row: row.row,
    order: 0,
    operator: shownText(value(plan.operator)),
    side: shownText(value(plan.side)),
    sex: shownText(value(plan.sex)),
    ageYears: exactNumber(value(plan.age)),
    grade:
      plan.grade && "column" in plan.grade ? recordedGrade(plan.grade.order, value(plan.grade.column)) : byMeasurement,
    gradeAsked:
      (plan.grade && "column" in plan.grade ? value(plan.grade.column) : value(measurementColumn)).kind === "asked",
    measurement,
    readings: (plan.measurement?.readings ?? []).flat().map((column) => exactNumber(value(column))),
    gradeByMeasurement: byMeasurement,
    firstTechnique: first,
    finalTechnique: final,
    converted,
    techniqueAsked: [plan.technique?.first, plan.technique?.final].some((column) => value(column).kind === "asked"),
    success: Object.fromEntries(success),
    complications: listOf(complications),
    reason: shownText(value(plan.reason)),
    followUpMonths: exactNumber(value(plan.followUp?.column)),
    motionInjured: exactNumber(value(plan.motion?.injured)),
    motionOther: exactNumber(value(plan.motion?.other)),
    subgroups: plan.subgroups.map(({ name, rule }) => [name, judged(rule)] as const),
  };
}

function exactNumber(value: Value): number | null {
  return value.kind === "number" && value.bound === undefined ? value.number : null;
}

function listOf(value: Value): readonly string[] | null {
  if (value.kind === "list") return value.items;
  if (value.kind === "text") return [value.text];
  if (value.kind === "yesNo") return value.yes ? ["unspecified"] : [];
  return null;
}

function shownText(value: Value): string | null {
  if (value.kind === "text") return value.text;
  if (value.kind === "number") return String(value.number);
  if (value.kind === "date") return value.iso;
  if (value.kind === "yesNo") return value.yes ? "yes" : "no";
  if (value.kind === "grade") return value.grade + (value.sub ?? "");
  return value.kind === "list" ? value.items.join("; ") || "none" : null;
}

function recordedGrade(order: readonly string[], value: Value): string | null {
  const text = value.kind === "grade" ? value.grade : shownText(value);
  if (text === null) return null;
  return order.find((grade) => grade.toLowerCase() === text.toLowerCase()) ?? null;
}

function gradeByMeasurement(plan: Plan, measurement: number | null): string | null {
  if (measurement === null || plan.grade === undefined) return null;
  const cutPoints = "cutPoints" in plan.grade ? plan.grade.cutPoints : plan.measurement?.cutPoints;
  return cutPoints === undefined ? null : (gradeAtCutPoints(measurement, cutPoints, plan.grade.order) ?? null);
}

function techniqueOf(plan: TechniquePlan | undefined, value: Value): Technique | null {
  const text = shownText(value)?.trim().toLowerCase();
  if (plan === undefined || text === undefined) return null;
  const holds = (values: readonly string[]): boolean => values.some((one) => one.trim().toLowerCase() === text);
  return holds(plan.closed) ? "closed" : holds(plan.assisted) ? "assisted" : holds(plan.open) ? "open" : null;
}
