import type { ColumnTest, Plan, Rule, SuccessKind, TechniquePlan } from "./types.js";

/**
 * The counts of a plan (grade x first technique, successes of cases) as one GROUP BY statement in standard SQL, for registries that
 * no notebook could hold. SQL's three-valued logic is the one that rules are judged by here. Columns compared with numbers must be
 * numeric, missing values NULL.
 * @param table name of the table that holds one row a case
 * @throws RangeError when the unit is the child, or the plan has no grade: GROUP BY alone cannot count these
 */
export function planSql(plan: Plan, options: { readonly table: string; readonly success?: SuccessKind }): string {
  const { table, success = plan.primary } = options;
  if (plan.unit === "child") throw new RangeError("planSql: unit must be limb, got child");
  if (plan.grade === undefined) throw new RangeError("planSql: the plan must name a grade");
  const rule = plan.success.find(({ kind }) => kind === success);
  if (rule === undefined) throw new RangeError(`planSql: the plan defines no success of the kind ${success}`);
  const kept = plan.exclusions.map((exclusion) => `NOT COALESCE((${ruleSql(exclusion.rule)}), FALSE)`);
  const leaving = leavesSql(plan);
  const stays =
    success === "technical" ? "success IS NOT NULL" : "success IS NOT NULL AND (leaving = 0 OR success = 0)";
  return `WITH judged AS (
  SELECT
    ${gradeSql(plan)} AS grade,
    ${techniqueSql(plan.technique)} AS technique,
    ${successSql(plan.technique, rule.rule)} AS success,
    CASE WHEN ${leaving} THEN 1 ELSE 0 END AS leaving
  FROM ${name(table)}
  WHERE ${kept.length === 0 ? "TRUE" : kept.join("\n    AND ")}
)
SELECT grade, technique, SUM(success) AS successes, COUNT(*) AS cases
FROM judged
WHERE ${stays}
GROUP BY grade, technique
ORDER BY grade, technique;
`;
}

function leavesSql({ lost, followUp }: Plan): string {
  const parts = [
    ...(lost === undefined ? [] : [ruleSql(lost)]),
    ...(followUp?.minimumMonths === undefined ? [] : [`${name(followUp.column)} < ${number(followUp.minimumMonths)}`]),
  ];
  return parts.length === 0 ? "FALSE" : `COALESCE((${parts.join(" OR ")}), FALSE)`;
}

function gradeSql({ grade }: Plan): string {
  if ("column" in grade!)
    return `CASE ${grade.order.map((one) => `WHEN ${word(grade.column)} = ${text(one)} THEN ${literal(one)}`).join(" ")} END`;
  const { measurement, cutPoints, order } = grade as {
    measurement: string;
    cutPoints: readonly number[];
    order: readonly string[];
  };
  const cuts = cutPoints.map((cut, i) => `WHEN ${name(measurement)} <= ${number(cut)} THEN ${literal(order[i]!)}`);
  return `CASE ${[...cuts, `WHEN ${name(measurement)} IS NOT NULL THEN ${literal(order.at(-1)!)}`].join(" ")} END`;
}

function techniqueSql(technique: TechniquePlan | undefined): string {
  return technique === undefined ? "NULL" : stepSql(technique, technique.first);
}

function stepSql(technique: TechniquePlan, column: string): string {
  const steps = (["closed", "assisted", "open"] as const).filter((step) => technique[step].length > 0);
  return `CASE ${steps.map((step) => `WHEN ${word(column)} IN (${technique[step].map(text).join(", ")}) THEN ${literal(step)}`).join(" ")} END`;
}

function successSql(technique: TechniquePlan | undefined, rule: Rule): string {
  const judged = `WHEN ${ruleSql(rule)} THEN 1 WHEN NOT (${ruleSql(rule)}) THEN 0`;
  if (technique?.final === undefined || technique.conversionFails.length === 0) return `CASE ${judged} END`;
  const ends = technique.conversionFails.map(literal).join(", ");
  return `CASE WHEN ${stepSql(technique, technique.first)} = 'closed' AND ${stepSql(technique, technique.final)} IN (${ends}) THEN 0 ${judged} END`;
}

function ruleSql(rule: Rule): string {
  if ("all" in rule) return `(${rule.all.map(ruleSql).join(" AND ")})`;
  if ("any" in rule) return `(${rule.any.map(ruleSql).join(" OR ")})`;
  if ("not" in rule) return `NOT (${ruleSql(rule.not)})`;
  return testSql(rule);
}

function testSql(test: ColumnTest): string {
  if (test.present !== undefined) return `${name(test.column)} IS ${test.present ? "NOT " : ""}NULL`;
  if (test["="] !== undefined) return equalsSql(test.column, [test["="]]);
  if (test.in !== undefined) return equalsSql(test.column, test.in);
  for (const [sign, sql] of [
    ["<", "<"],
    ["≤", "<="],
    [">", ">"],
    ["≥", ">="],
  ] as const)
    if (test[sign] !== undefined) return `${name(test.column)} ${sql} ${number(test[sign])}`;
  throw new RangeError(`planSql: a test of "${test.column}" must hold a comparator`);
}

function equalsSql(column: string, values: readonly (string | number | boolean)[]): string {
  if (values.every((value) => typeof value === "number"))
    return `${name(column)} IN (${values.map(number).join(", ")})`;
  const words = values.flatMap((value) =>
    value === true ? ["yes", "y", "true", "1"] : value === false ? ["no", "n", "false", "0"] : [String(value)],
  );
  return `${word(column)} IN (${words.map(text).join(", ")})`;
}

/** A cell as a trimmed word in lower case. */
function word(column: string): string {
  return `LOWER(TRIM(CAST(${name(column)} AS VARCHAR(255))))`;
}

function name(identifier: string): string {
  return `"${identifier.replaceAll('"', '""')}"`;
}

function literal(value: string): string {
  return `'${value.replaceAll("'", "''")}'`;
}

function text(value: string): string {
  return literal(value.trim().toLowerCase());
}

function number(value: number): string {
  return String(value);
}
