import type { Distinct } from "./column-facts.js";

const convention = 2049;

/** The latest four-digit year of the dates in a sheet; two-digit years are read against it. 2049 when there is none. */
export function latestYearNamed(columns: readonly (readonly Distinct[])[]): number {
  let latest = 0;
  for (const cells of columns)
    for (const { text, cell } of cells) {
      const year = /^\d{1,2}[./-]\d{1,2}[./-]((?:19|20)\d{2})$|^((?:19|20)\d{2})-\d{2}-\d{2}/.exec(cell.date ?? text);
      if (year) latest = Math.max(latest, Number(year[1] ?? year[2]));
    }
  return latest || convention;
}
