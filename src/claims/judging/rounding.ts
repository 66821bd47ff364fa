import type { PrintedNumber } from "../text/token.js";

/** Ways in which a value becomes printed digits. A tie may go either way under "rounded" (half up or half to even). */
export const roundings = ["rounded", "truncated", "one digit fewer"] as const;
export type Rounding = (typeof roundings)[number];

/** Slack for a value computed in binary that lies on a tie: far below a unit of any printed digit. */
const slack = 1e-7;

/**
 * Whether a value prints as these digits by one way of rounding.
 * @param value in the unit of the printed number
 */
export function prints(value: number, printed: PrintedNumber, rounding: Rounding): boolean {
  if (!Number.isFinite(value)) return value === printed.value;
  const scaled = value * 10 ** printed.decimals;
  const target = Math.round(printed.value * 10 ** printed.decimals);
  const gap = Math.abs(scaled - target);
  if (rounding === "rounded") return gap <= 0.5 + slack;
  if (rounding === "one digit fewer") return printed.decimals >= 1 && target % 10 === 0 && gap <= 5 + slack;
  const beyond = target >= 0 && scaled >= -slack ? scaled - target : target - scaled;
  return beyond >= -slack && beyond < 1;
}

/** The first way of rounding that explains every pair of value and print, or null. Negative zero is zero. */
export function roundingOf(
  pairs: readonly (readonly [value: number, printed: PrintedNumber])[],
  ways: readonly Rounding[] = roundings,
): Rounding | null {
  return ways.find((way) => pairs.every(([value, printed]) => prints(value, printed, way))) ?? null;
}

/** A method's name with the rounding, when it is not the ordinary one. */
export const named = (method: string, rounding: Rounding): string =>
  rounding === "rounded"
    ? method
    : `${method}, ${rounding === "truncated" ? "truncated" : "rounded to one digit fewer"}`;

/** True when a value lies on a rounding tie at this many decimals. */
export function onTie(value: number, decimals: number): boolean {
  const scaled = Math.abs(value * 10 ** decimals);
  return Math.abs(scaled - Math.floor(scaled) - 0.5) < slack;
}
