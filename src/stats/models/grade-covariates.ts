import { requireOptions } from "../guards.js";
import type { Covariate } from "./logistic-data.js";

export const gradeForms = ["score", "levels"] as const;
export type GradeForm = (typeof gradeForms)[number];

/**
 * Grades as columns of a model: one score (the position of the grade in its order, from 1), or one column a level of 0
 * and 1 against the lowest level that occurs. Levels that no case has get no column.
 *
 * @param grades one a case
 * @param options.order every grade from the mildest to the worst
 * @param options.as "score" (the default: one covariate) or "levels"
 * @param options.name stem of the column names; default "grade"
 * @throws RangeError when a grade is not in the order; TypeError on an unknown form
 * @example gradeCovariates(["I", "III"], { order: ["I", "II", "III"] })[0].values // => [1, 3]
 */
export function gradeCovariates(
  grades: readonly string[],
  options: { readonly order: readonly string[]; readonly as?: GradeForm; readonly name?: string },
): readonly Covariate[] {
  requireOptions("gradeCovariates", options, ["order", "as", "name"]);
  const { order, as = "score", name = "grade" } = options;
  if (!gradeForms.includes(as))
    throw new TypeError(`gradeCovariates: as must be one of ${gradeForms.join(", ")}, got ${String(as)}`);
  const positions = grades.map((grade) => {
    const at = order.indexOf(grade);
    if (at < 0) throw new RangeError(`gradeCovariates: every grade must be one of ${order.join(", ")}, got ${grade}`);
    return at + 1;
  });
  if (as === "score") return [{ name, values: positions }];
  const present = order.filter((grade) => grades.includes(grade));
  return present
    .slice(1)
    .map((level) => ({ name: `${name} ${level}`, values: grades.map((grade) => (grade === level ? 1 : 0)) }));
}
