import { cellLook } from "./cell-look.js";
import type { Distinct } from "../values/column-facts.js";

/** Whether a share of a column's cells, half by default, passes a test; true for a column without cells. */
export function mostly(values: readonly Distinct[], test: (value: Distinct) => boolean, share = 0.5): boolean {
  if (values.length === 0) return true;
  let all = 0;
  let fit = 0;
  for (const value of values) {
    all += value.count;
    if (test(value)) fit += value.count;
  }
  return fit >= all * share;
}

/** A date by its cell or its look. */
export function isDate({ text, cell }: Distinct): boolean {
  return cell.date !== undefined || cellLook(text) === "date";
}
