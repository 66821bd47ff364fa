import * as v from "valibot";
import { roles } from "../cases/types.js";
import { PlanError } from "./plan-error.js";
import { comparators, successKinds, type Plan, type Rule } from "./types.js";

const text = v.pipe(v.string(), v.trim(), v.nonEmpty("must not be empty"));
const texts = v.array(text);
const literal = v.union([v.string(), v.number(), v.boolean()], "must be text, a number, true or false");

/** ASCII spellings are read as the signs they stand for. */
const spelled: Record<string, string> = { "<=": "≤", ">=": "≥", "==": "=" };

const columnTest = v.pipe(
  v.strictObject({
    column: text,
    "=": v.optional(literal),
    in: v.optional(v.pipe(v.array(v.union([v.string(), v.number()])), v.minLength(1, "must name at least one value"))),
    "<": v.optional(v.number()),
    "≤": v.optional(v.number()),
    ">": v.optional(v.number()),
    "≥": v.optional(v.number()),
    present: v.optional(v.boolean()),
  }),
  v.check(
    (test) => comparators.filter((comparator) => test[comparator] !== undefined).length === 1,
    `must hold exactly one of ${comparators.join(", ")}`,
  ),
);

const rule: v.GenericSchema<Rule> = v.lazy((input) => {
  if (isObject(input) && "all" in input)
    return v.strictObject({ all: v.pipe(v.array(rule), v.minLength(1, "must hold at least one rule")) });
  if (isObject(input) && "any" in input)
    return v.strictObject({ any: v.pipe(v.array(rule), v.minLength(1, "must hold at least one rule")) });
  if (isObject(input) && "not" in input) return v.strictObject({ not: rule });
  return columnTest as unknown as v.GenericSchema<Rule>;
});

const namedRule = v.strictObject({ name: text, rule });
const order = v.pipe(
  v.array(text),
  v.minLength(1, "must name at least one grade"),
  v.check((grades) => new Set(grades).size === grades.length, "must not name a grade twice"),
);
const cutPoints = v.pipe(
  v.array(v.number()),
  v.check((cuts) => cuts.every((cut, i) => i === 0 || cut > cuts[i - 1]!), "must rise"),
);
/** A column of one observer, or all of the observer's columns. */
const observer: v.GenericSchema<string | string[]> = v.lazy((input) =>
  Array.isArray(input) ? v.pipe(texts, v.minLength(1, "must name at least one column")) : text,
);
const measurement = v.strictObject({
  column: text,
  cutPoints,
  readings: v.optional(
    v.pipe(
      v.array(observer),
      v.check((observers) => observers.flat().length >= 2, "must name at least two columns"),
      v.check(
        (observers) => new Set(observers.flat()).size === observers.flat().length,
        "must not name a column twice",
      ),
    ),
  ),
  error: v.optional(
    v.pipe(
      v.number(),
      v.check((error) => error > 0 && Number.isFinite(error), "must be above 0"),
    ),
  ),
  treatedOpen: v.optional(v.pipe(texts, v.minLength(1, "must name at least one grade"))),
});

const schema = v.pipe(
  v.strictObject({
    title: text,
    note: v.optional(text),
    frozen: v.optional(v.pipe(v.string(), v.isoDate("must be a date such as 2026-01-31"))),
    unit: v.optional(v.picklist(["limb", "child"], 'must be "limb" or "child"'), "limb"),
    limb: v.optional(text, "limb"),
    id: v.optional(text),
    child: v.optional(text),
    side: v.optional(text),
    order: v.optional(text),
    operator: v.optional(text),
    age: v.optional(text),
    sex: v.optional(text),
    exclusions: v.optional(v.array(namedRule), []),
    lost: v.optional(rule),
    grade: v.optional(
      v.union(
        [
          v.strictObject({ column: text, order }),
          v.pipe(
            v.strictObject({ measurement: text, cutPoints, order }),
            v.check(
              (grade) => grade.order.length === grade.cutPoints.length + 1,
              "must have one grade more than cut-points",
            ),
          ),
        ],
        'must be { "column", "order" } or { "measurement", "cutPoints", "order" } with one grade more than cut-points',
      ),
    ),
    measurement: v.optional(measurement),
    technique: v.optional(
      v.strictObject({
        first: text,
        final: v.optional(text),
        closed: texts,
        assisted: v.optional(texts, []),
        open: texts,
        conversionFails: v.optional(v.array(v.picklist(["assisted", "open"])), ["assisted", "open"]),
      }),
    ),
    success: v.pipe(
      v.array(
        v.strictObject({
          kind: v.picklist(successKinds, `must be one of ${successKinds.join(", ")}`),
          says: text,
          rule,
        }),
      ),
      v.minLength(1, "must hold at least one success rule"),
      v.check(
        (all) => new Set(all.map(({ kind }) => kind)).size === all.length,
        "must not define a kind of success twice",
      ),
    ),
    primary: v.picklist(successKinds, `must be one of ${successKinds.join(", ")}`),
    subgroups: v.optional(v.array(namedRule), []),
    complications: v.optional(v.strictObject({ column: text, searched: v.optional(texts, []) })),
    reason: v.optional(text),
    followUp: v.optional(
      v.strictObject({ column: text, minimumMonths: v.optional(v.pipe(v.number(), v.minValue(0))) }),
    ),
    motion: v.optional(v.strictObject({ injured: text, other: text, name: v.optional(text, "motion") })),
    smallCells: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0))),
    roles: v.optional(v.record(v.string(), v.picklist(roles, `must be one of ${roles.join(", ")}`))),
  }),
  v.check(
    (plan) => plan.success.some(({ kind }) => kind === plan.primary),
    "primary must be one of the kinds under success",
  ),
  v.check(
    ({ grade, measurement: measured }) =>
      grade === undefined || measured === undefined || measured.cutPoints.length === grade.order.length - 1,
    "measurement must have one cut-point less than grades",
  ),
  v.check(
    ({ grade, measurement: measured }) =>
      grade === undefined ||
      measured === undefined ||
      "column" in grade ||
      (grade.measurement === measured.column && String(grade.cutPoints) === String(measured.cutPoints)),
    "measurement must have the column and the cut-points that the grade is cut by",
  ),
  v.check(
    ({ grade, measurement: measured }) =>
      measured?.treatedOpen?.every((name) => grade?.order.includes(name) === true) !== false,
    "measurement.treatedOpen must name grades of the plan",
  ),
);

/**
 * A plan from the text of its JSON file, every fault named by its place in the file.
 * @param file name of the file, for messages
 * @throws PlanError listing all faults
 */
export function readPlan(json: string, file: string): Plan {
  let parsed: unknown;
  try {
    parsed = JSON.parse(json.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw new PlanError(file, [`is not JSON (${(error as Error).message})`]);
  }
  const result = v.safeParse(schema, withSigns(parsed));
  if (!result.success) throw new PlanError(file, result.issues.map(fault));
  return result.output as Plan;
}

function withSigns(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withSigns);
  if (!isObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, held]) => [spelled[key] ?? key, withSigns(held)]));
}

function fault(issue: v.BaseIssue<unknown>): string {
  const place = (issue.path ?? [])
    .map(({ key }) => (typeof key === "number" ? `[${key}]` : `.${String(key)}`))
    .join("");
  const at = place.replace(/^\./, "");
  if (issue.kind === "schema" && issue.type === "strict_object" && issue.expected === "never")
    return `${at}: no such entry is known`;
  if (issue.received === "undefined") return `${at}: is missing`;
  const rule = /^Invalid /.test(issue.message) ? `must be ${issue.expected}, got ${issue.received}` : issue.message;
  return at ? `${at}: ${rule}` : rule;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
