/**
 * One JSON object as the contract prints it: unrounded, infinities as the strings "Infinity" and "-Infinity".
 * @throws TypeError when a NaN slipped through, naming its field
 */
export function toJson(value: object): string {
  return `${JSON.stringify(value, replaceInfinity, 2)}\n`;
}

function replaceInfinity(key: string, value: unknown): unknown {
  if (typeof value !== "number" || Number.isFinite(value)) return value;
  if (Number.isNaN(value)) throw new TypeError(`toJson: field "${key}" is NaN`);
  return value > 0 ? "Infinity" : "-Infinity";
}
