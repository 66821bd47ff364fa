import { chiSquareUpper } from "../../numeric/chi-square.js";
import { normalUpper } from "../../numeric/normal.js";
import { studentTUpper } from "../../numeric/student-t.js";

/**
 * Two-sided p of a printed test statistic (upper tail for chi-square).
 * @param statistic.name "chi-square", "t" or "z"
 * @param statistic.df degrees of freedom above 0; not used for z
 * @throws RangeError when the value is not finite, a chi-square is negative or df is not above 0
 * @example statisticP({ name: "chi-square", value: 4.887, df: 1 }) // => 0.0270597
 */
export function statisticP(statistic: {
  readonly name: "chi-square" | "t" | "z";
  readonly value: number;
  readonly df?: number;
}): number {
  const { name, value, df = 1 } = statistic;
  if (!Number.isFinite(value) || (name === "chi-square" && value < 0))
    throw new RangeError(`statisticP: value must be finite, and not negative for chi-square, got ${value}`);
  if (!(df > 0)) throw new RangeError(`statisticP: df must be above 0, got ${df}`);
  if (name === "chi-square") return chiSquareUpper(value, df);
  return Math.min(1, 2 * (name === "t" ? studentTUpper(Math.abs(value), df) : normalUpper(Math.abs(value))));
}
