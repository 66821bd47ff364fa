import type { PercentFact } from "./facts.js";
import { type Cursor, numberAt, percentEnd, textAt } from "./cursor.js";

/** A percentage that fills or opens a bracket, and one past the bracket. */
export interface PercentBracket {
  readonly percent: PercentFact;
  readonly to: number;
}

const longest = 24;

/**
 * "(87%)", "[87 per cent]", "(87%; 95% CI 75 to 94)" and "(87.2)" at `i`. A bare number counts as a percentage where the
 * reader of counts has found a count before the bracket and its whole behind.
 */
export function percentInBrackets(cursor: Cursor, i: number): PercentBracket | null {
  if (textAt(cursor, i) !== "(" && textAt(cursor, i) !== "[") return null;
  const number = numberAt(cursor, i + 1);
  if (!number || number.value < 0) return null;
  const end = percentEnd(cursor, i + 2);
  const close = closing(cursor, i);
  const marked = end > i + 2;
  if (close < 0 || (marked ? !["", ",", ";"].includes(end === close ? "" : textAt(cursor, end)) : close !== i + 2))
    return null;
  const percent: PercentFact = {
    kind: "percent", from: i + 1, to: end, number: { ...number, unit: "percent" }, trials: null, unit: null, marked,
  }; // prettier-ignore
  return { percent, to: close + 1 };
}

/** "16% (4)", "16% (n = 4)": the percentage first, its count in the bracket; null where the bracket holds more. */
export function countInBrackets(cursor: Cursor, i: number): { percent: PercentFact; count: number; to: number } | null {
  const number = numberAt(cursor, i);
  const end = percentEnd(cursor, i + 1);
  if (!number || end === i + 1 || (textAt(cursor, end) !== "(" && textAt(cursor, end) !== "[")) return null;
  const at = textAt(cursor, end + 1) === "n" && textAt(cursor, end + 2) === "=" ? end + 3 : end + 1;
  const count = numberAt(cursor, at);
  const close = closing(cursor, end);
  if (!count || count.decimals > 0 || count.value < 0 || close !== at + 1) return null;
  const percent: PercentFact = {
    kind: "percent", from: i, to: end, number: { ...number, unit: "percent" }, trials: null, unit: null, marked: true,
  }; // prettier-ignore
  return { percent, count: count.value, to: close + 1 };
}

/** The bracket that closes the one opened at `i`, or -1. */
function closing(cursor: Cursor, i: number): number {
  const depth = cursor.depth[i]!;
  for (let at = i + 1; at < i + longest && at < cursor.tokens.length; at++)
    if ((textAt(cursor, at) === ")" || textAt(cursor, at) === "]") && cursor.depth[at] === depth) return at;
  return -1;
}
