import type { CaseTable } from "../cases/types.js";
import { PlanError } from "./plan-error.js";
import { ruleColumns } from "./rule-columns.js";
import type { Plan } from "./types.js";

/**
 * Holds a plan against the sheet it is meant for: every column named must exist and be shown.
 * @param file name of the plan's file, for messages
 * @throws PlanError naming each absent or quarantined column with the columns there are
 */
export function checkPlan(plan: Plan, table: CaseTable, file: string): void {
  const open = table.columns.filter(({ role }) => role !== "identifier").map(({ name }) => name);
  const faults = namedColumns(plan).flatMap(({ place, column }) => {
    if (open.includes(column)) return [];
    if (table.identifiers.includes(column))
      return [`${place}: column "${column}" of ${table.file} holds identifiers and is kept out`];
    return [`${place}: ${table.file} has no column "${column}" (its columns: ${open.join(", ")})`];
  });
  if (faults.length > 0) throw new PlanError(file, [...new Set(faults)]);
}

interface NamedColumn {
  readonly place: string;
  readonly column: string;
}

function namedColumns(plan: Plan): NamedColumn[] {
  const single = (["id", "child", "side", "order", "operator", "age", "sex", "reason"] as const).flatMap((place) =>
    plan[place] === undefined ? [] : [{ place, column: plan[place] }],
  );
  const at = (place: string, ...names: (string | undefined)[]): NamedColumn[] =>
    names.flatMap((column) => (column === undefined ? [] : [{ place, column }]));
  const grade =
    plan.grade === undefined ? undefined : "column" in plan.grade ? plan.grade.column : plan.grade.measurement;
  return [
    ...single,
    ...at("grade", grade),
    ...at("measurement", plan.measurement?.column),
    ...(plan.measurement?.readings ?? []).flatMap((observer, i) =>
      typeof observer === "string"
        ? at(`measurement.readings[${i}]`, observer)
        : observer.flatMap((column, j) => at(`measurement.readings[${i}][${j}]`, column)),
    ),
    ...at("technique.first", plan.technique?.first),
    ...at("technique.final", plan.technique?.final),
    ...at("complications", plan.complications?.column),
    ...at("followUp", plan.followUp?.column),
    ...at("motion", plan.motion?.injured, plan.motion?.other),
    ...at("lost", ...(plan.lost === undefined ? [] : ruleColumns(plan.lost))),
    ...plan.exclusions.flatMap(({ rule }, i) => at(`exclusions[${i}]`, ...ruleColumns(rule))),
    ...plan.success.flatMap(({ rule }, i) => at(`success[${i}]`, ...ruleColumns(rule))),
    ...plan.subgroups.flatMap(({ rule }, i) => at(`subgroups[${i}]`, ...ruleColumns(rule))),
  ];
}
