import * as v from "valibot";
import type { SheetIssue } from "../../cases/sheet-error.js";
import { cardUnits, definitionMatches } from "./paper-card.js";

const count = v.nullable(v.pipe(v.number(), v.integer("must be a whole number"), v.minValue(0, "must be at least 0")));
const stated = v.optional(v.nullable(v.string()), null);
/** A paper card as a file holds it. */
export const cardSchema = v.strictObject({
  name: v.pipe(v.string(), v.trim(), v.nonEmpty("must not be empty")),
  unit: v.optional(v.picklist(cardUnits, `must be one of ${cardUnits.join(", ")}`), "not stated"),
  definition: stated,
  match: v.optional(v.picklist(definitionMatches, `must be one of ${definitionMatches.join(", ")}`), "not stated"),
  followUp: stated,
  lost: v.optional(count, null),
  complications: stated,
  rows: v.array(
    v.pipe(
      v.strictObject({
        grade: v.pipe(v.string(), v.trim(), v.nonEmpty("must not be empty")),
        technique: v.optional(v.string(), ""),
        successes: count,
        cases: count,
      }),
      v.check(
        ({ successes, cases }) => successes === null || cases === null || successes <= cases,
        "successes must be at most the cases",
      ),
    ),
  ),
});

/** A fault of a JSON file, by the place where it stands. */
export function fault(issue: v.BaseIssue<unknown>): SheetIssue {
  const place = (issue.path ?? []).map(({ key }) => (typeof key === "number" ? `[${key + 1}]` : String(key))).join(" ");
  const known = /^Invalid /.test(issue.message) ? `must be ${issue.expected}` : issue.message;
  return { rule: `${place}: ${issue.expected === "never" ? "no such entry is known" : known}` };
}
