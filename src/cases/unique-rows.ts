import type { SharedTable } from "./share-safe.js";

/**
 * Case numbers of the rows that no other row equals in all columns but the numbers of case and child. Who knows one of
 * these cases may know it again, although nothing in it names anybody.
 */
export function uniqueRows({ columns, rows }: SharedTable): string[] {
  const kept = columns.flatMap(({ role }, k) => (role === "id" || role === "child" ? [] : [k]));
  const keys = rows.map((row) => JSON.stringify(kept.map((k) => row[k])));
  const seen = new Map<string, number>();
  for (const key of keys) seen.set(key, (seen.get(key) ?? 0) + 1);
  return rows.flatMap((row, i) => (seen.get(keys[i]!) === 1 ? [row[0]!] : []));
}
