import type { Quantity } from "./facts.js";
import { type Cursor, percentEnd, quantityAt, textAt, withUnit } from "./cursor.js";

export interface Range {
  readonly low: Quantity;
  readonly high: Quantity;
  readonly to: number;
  readonly joint: string;
}

const joints = new Set(["to", "-", ",", ";", "and", "through", "—", "~", "until"]);

/**
 * Two numbers that form a range from token `i` on: "75% to 94%", "75-94", "0.72, 0.93", "between 75 and 94".
 * @param allowed joints accepted between the two; all when left out
 */
export function rangeAt(cursor: Cursor, i: number, allowed: ReadonlySet<string> = joints): Range | null {
  const from = textAt(cursor, i) === "from" || textAt(cursor, i) === "between" ? i + 1 : i;
  const first = quantityAt(cursor, from);
  if (!first) return null;
  const split = cursor.tokens[from]!.split;
  let at = first.to;
  const joint = textAt(cursor, at);
  if (joints.has(joint) && (allowed.has(joint) || textAt(cursor, i) === "between")) {
    const second = highAt(cursor, at + 1);
    if (second) return { ...sameUnit(first.quantity, second.quantity), to: second.to, joint };
  }
  // "75 −94": a dash that was read as a sign because a space stands before it.
  const next = quantityAt(cursor, at);
  if (next && allowed.has("-") && first.quantity.value >= 0 && next.quantity.value < 0)
    return { ...sameUnit(first.quantity, { ...next.quantity, value: -next.quantity.value }), to: next.to, joint: "-" };
  if (split && allowed.has(",")) {
    at = from + 1;
    const high = withUnit(cursor, split[1], at);
    return { ...sameUnit({ ...split[0], unit: null }, high.quantity), to: high.to, joint: "," };
  }
  return null;
}

function highAt(cursor: Cursor, i: number): { quantity: Quantity; to: number } | null {
  const text = textAt(cursor, i);
  if (text === "∞" || text === "infinity") return { quantity: { value: Infinity, decimals: 0, unit: null }, to: i + 1 };
  const at = text === "<" || text === "+" ? i + 1 : i;
  return quantityAt(cursor, at);
}

/** A unit printed once serves both ends. */
function sameUnit(low: Quantity, high: Quantity): { low: Quantity; high: Quantity } {
  const unit = high.unit ?? low.unit;
  return { low: { ...low, unit: low.unit ?? unit }, high: { ...high, unit } };
}

/** True when the number at `i` is a level of confidence: "95%" before an interval's name. */
export function levelAt(cursor: Cursor, i: number): { level: number; to: number } | null {
  const number = cursor.tokens[i]?.number;
  if (!number || cursor.taken[i] || number.value < 50 || number.value >= 100) return null;
  const to = percentEnd(cursor, i + 1);
  return to > i + 1 ? { level: number.value / 100, to } : null;
}
