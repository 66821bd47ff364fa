/** Paths of the numbers in a result that are NaN and of the nulls that no reason accompanies. */
export function faults(value: unknown, because = false, path = ""): string[] {
  if (typeof value === "number") return Number.isNaN(value) ? [path] : [];
  if (value === null) return because ? [] : [path];
  if (typeof value !== "object") return [];
  const explained = because || "because" in (value as object);
  return Object.entries(value as object).flatMap(([key, part]) => faults(part, explained, `${path}.${key}`));
}
