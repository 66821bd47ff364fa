import type { CaseTable, Column, Role, Value } from "../cases/types.js";
import { SheetError } from "../cases/sheet-error.js";
import { kindOfSuccess } from "../cases/success-kind.js";
import { belongingOf, type Belonging } from "../cases/table/yes-no-heading.js";
import { draftTechnique } from "./draft-technique.js";
import { gradeOrder } from "./grade-order.js";
import type { NamedRule, Plan, Rule, SuccessKind, SuccessPlan } from "./types.js";

/** A plan made from the sheet alone, with everything it took for granted, for a person to confirm. */
export interface DraftedPlan {
  readonly plan: Plan;
  readonly assumptions: readonly string[];
}

/**
 * Drafts a plan from the roles of the columns and the values found.
 * @throws SheetError when the sheet has no grade or nothing that says whether treatment succeeded
 */
export function draftPlan(table: CaseTable): DraftedPlan {
  const first = (role: Role, words = /./): Column | undefined =>
    table.columns.find((column) => column.role === role && words.test(column.name)) ??
    table.columns.find((column) => column.role === role);
  const named = (words: RegExp): Column | undefined =>
    table.columns.find(({ name, role }) => words.test(name) && role !== "identifier");
  const values = (column: Column): Value[] => table.cases.map((row) => row.values[table.columns.indexOf(column)]!);

  const grade = first("grade");
  const success = successPlans(table);
  refuse(table, grade, success);
  const technique = draftTechnique(first("firstTechnique"), first("finalTechnique"), values);
  const about = (belonging: Belonging): Column[] =>
    table.columns.filter(({ name, role }) => role === "other" && belongingOf(name) === belonging);
  const exclusions = [
    ...about("exclusion").flatMap((column) => exclusionRules(column, values)),
    ...about("inclusion").flatMap((column) => inclusionRules(column, values)),
  ];
  const lost = lostRule(table, about("loss"), values);
  const complication = first("complication");
  const operator = table.columns.find(({ role }) => role === "operator");
  const reason = named(/reason/i);
  const entries = {
    id: first("id")?.name,
    child: first("child")?.name,
    side: first("side")?.name,
    order: first("date", /treat|operat|surg|reduc/i)?.name,
    operator: operator?.name,
    age: first("age")?.name,
    sex: first("sex")?.name,
    lost: lost,
    technique: technique?.plan,
    reason: reason === undefined || /exclu/i.test(reason.name) ? undefined : reason.name,
    complications: complication && { column: complication.name, searched: kindsSeen(values(complication)) },
    followUp: numericFollowUp(table, values),
  };
  const plan: Plan = {
    title: "Case series",
    unit: "limb",
    limb: "limb",
    exclusions,
    grade: { column: grade!.name, order: gradeOrder(values(grade!)) },
    success,
    primary: success[0]!.kind,
    subgroups: [],
    ...(Object.fromEntries(Object.entries(entries).filter(([, entry]) => entry !== undefined)) as Partial<Plan>),
  };
  return { plan, assumptions: [...assumptions(plan), ...(technique?.assumptions ?? [])] };
}

function refuse(table: CaseTable, grade: Column | undefined, success: readonly SuccessPlan[]): void {
  const columns = table.columns.filter(({ role }) => role !== "identifier").map(({ name }) => name);
  const open = table.questions.find(
    ({ id }) => id === "grades in sub-headings" || id === "sheets with the same heading",
  );
  const hint = open === undefined ? "" : `answer the question "${open.id}" if it is named there, or `;
  const there = `its columns: ${columns.join(", ")}`;
  const issues = [
    ...(grade === undefined
      ? [{ rule: `no column holds a grade; ${hint}name one, or a measurement with cut-points, in a plan (${there})` }]
      : []),
    ...(success.length === 0
      ? [{ rule: `no column says whether treatment succeeded; give the rule in a plan (${there})` }]
      : []),
  ];
  if (issues.length > 0) throw new SheetError(table.file, issues);
}

/** One rule a kind: a typed column is taken as it stands, which the assumptions say. */
function successPlans(table: CaseTable): SuccessPlan[] {
  const plans = new Map<SuccessKind, SuccessPlan>();
  for (const { name, role, sense } of table.columns) {
    if (role !== "success") continue;
    const good = sense !== "negative";
    const kind: SuccessKind = kindOfSuccess(name);
    if (!plans.has(kind))
      plans.set(kind, {
        kind,
        says: `"${name}" is recorded as ${good ? "yes" : "no"}`,
        rule: { column: name, "=": good },
      });
  }
  return [...plans.values()];
}

function exclusionRules(column: Column, values: (column: Column) => Value[]): NamedRule[] {
  const found = values(column).flatMap((value): string[] => {
    if (value.kind === "yesNo") return value.yes ? ["yes"] : [];
    if (value.kind === "list") return [...value.items];
    return value.kind === "text" && !/^(none|no|not excluded|included|-)$/i.test(value.text.trim())
      ? [value.text.trim()]
      : [];
  });
  return [...new Set(found)].map((text) => ({
    name: text === "yes" ? column.name : text,
    rule: { column: column.name, "=": text === "yes" ? true : text },
  }));
}

/** A no under a heading of inclusion takes the case out, and so does a reason typed there. */
function inclusionRules(column: Column, values: (column: Column) => Value[]): NamedRule[] {
  const found = values(column);
  if (!found.some(({ kind }) => kind === "yesNo")) return [];
  const reasons = new Set(found.flatMap((value) => (value.kind === "text" ? [value.text.trim()] : [])));
  const no = found.some((value) => value.kind === "yesNo" && !value.yes);
  return [
    ...(no ? [{ name: `${column.name}: no`, rule: { column: column.name, "=": false } }] : []),
    ...[...reasons].map((text) => ({ name: text, rule: { column: column.name, "=": text } })),
  ];
}

/** Lost where a cell says so, or a yes stands under a heading of loss. */
function lostRule(table: CaseTable, losses: readonly Column[], values: (column: Column) => Value[]): Rule | undefined {
  const says = table.columns.filter(
    (column) =>
      column.role !== "identifier" &&
      values(column).some((value) => value.kind === "missing" && value.reason === "lost"),
  );
  const yes = losses.filter((column) => values(column).some((value) => value.kind === "yesNo" && value.yes));
  const rules = [
    ...says.map(({ name }): Rule => ({ column: name, "=": "lost" })),
    ...yes.map(({ name }): Rule => ({ column: name, "=": true })),
  ];
  return rules.length < 2 ? rules[0] : { any: rules };
}

function numericFollowUp(table: CaseTable, values: (column: Column) => Value[]): { column: string } | undefined {
  const column = table.columns.find(
    (one) => one.role === "followUp" && values(one).some(({ kind }) => kind === "number"),
  );
  return column && { column: column.name };
}

function kindsSeen(values: readonly Value[]): string[] {
  const seen = values.flatMap((value) => (value.kind === "list" ? value.items : []));
  return [...new Set(seen)].toSorted();
}

function assumptions(plan: Plan): string[] {
  const lines = [
    `grades run from low to high as ${plan.grade!.order.join(", ")}`,
    ...plan.success.map(({ kind, says }) => `success (${kind}) means that ${says}`),
    plan.exclusions.length > 0
      ? `excluded: ${plan.exclusions.map(({ name }) => name).join("; ")}`
      : "nobody was excluded: no column says so",
    plan.lost === undefined ? "nobody was lost: no cell says so" : "lost to follow-up means that a cell says so",
    "the unit is the limb",
  ];
  if (plan.complications !== undefined && plan.complications.searched.length === 0)
    lines.push("no kind of complication was named, so no zero rows can be printed");
  return lines;
}
