import type { PrintedNumber, Token } from "../text/token.js";
import type { Place, Quantity } from "./facts.js";

/** One sentence being read: its tokens, and which of them a fact has already taken. */
export interface Cursor {
  readonly tokens: readonly Token[];
  readonly taken: boolean[];
  /** Depth of brackets at each token; an opening bracket counts as inside. */
  readonly depth: readonly number[];
  readonly row: boolean;
}

export function cursorOf(tokens: readonly Token[], row: boolean): Cursor {
  let open = 0;
  const depth = tokens.map((token) => {
    if (token.text === "(" || token.text === "[" || token.text === "{") return ++open;
    return token.text === ")" || token.text === "]" || token.text === "}" ? Math.max(0, open--) : Math.max(0, open);
  });
  return { tokens, taken: tokens.map(() => false), depth, row };
}

export const textAt = (cursor: Cursor, i: number): string => cursor.tokens[i]?.text ?? "";

export function take(cursor: Cursor, place: Place): void {
  for (let i = place.from; i < place.to; i++) cursor.taken[i] = true;
}

/** The number at `i` when no fact has taken it. */
export function numberAt(cursor: Cursor, i: number): PrintedNumber | null {
  return cursor.taken[i] ? null : (cursor.tokens[i]?.number ?? null);
}

/** A whole number from 0 on, free, and no percentage, decimal or measurement. */
export function countAt(cursor: Cursor, i: number): number | null {
  const number = numberAt(cursor, i);
  if (!number || number.decimals > 0 || number.value < 0 || !Number.isSafeInteger(number.value)) return null;
  return percentEnd(cursor, i + 1) > i + 1 ? null : number.value;
}

/** One past a percent sign or "per cent" at `i`, or `i` itself. */
export function percentEnd(cursor: Cursor, i: number): number {
  const text = textAt(cursor, i);
  if (text === "%" || text === "percent" || text === "pct") return pointsAfter(cursor, i + 1) ? i : i + 1;
  return text === "per" && textAt(cursor, i + 1) === "cent" && !pointsAfter(cursor, i + 2) ? i + 2 : i;
}

const pointsAfter = (cursor: Cursor, i: number): boolean =>
  textAt(cursor, i) === "points" || textAt(cursor, i) === "point";

/** One past "percentage points", "points" or "pp" at `i`, or `i` itself. */
export function pointsEnd(cursor: Cursor, i: number): number {
  let at = i;
  if (textAt(cursor, at) === "-") at++;
  const text = textAt(cursor, at);
  if (text === "percentage-point" || text === "percentage-points" || text === "pp") return at + 1;
  if (text === "percentage" || text === "%" || text === "percent") {
    if (textAt(cursor, at + 1) === "-") at++;
    return pointsAfter(cursor, at + 1) ? at + 2 : i;
  }
  if (text === "per" && textAt(cursor, at + 1) === "cent" && pointsAfter(cursor, at + 2)) return at + 3;
  return pointsAfter(cursor, at) ? at + 1 : i;
}

const measuredIn = new Set(
  "° mm cm m kg g ml day days week weeks wk wks month months mo mos year years yr yrs hour hours h min mins minute minutes degree degrees score".split(
    " ",
  ),
);

/** One past a unit of measurement at `i`, or `i` itself. */
export const measureEnd = (cursor: Cursor, i: number): number => {
  const at = textAt(cursor, i) === "-" ? i + 1 : i;
  return measuredIn.has(textAt(cursor, at)) ? at + 1 : i;
};

/** The quantity that starts at `i` with its unit mark, and one past it. */
export function quantityAt(cursor: Cursor, i: number): { quantity: Quantity; to: number } | null {
  const token = cursor.tokens[i];
  if (!token?.number || cursor.taken[i]) return null;
  return withUnit(cursor, token.number, i + 1);
}

export function withUnit(
  cursor: Cursor,
  { value, decimals }: PrintedNumber,
  at: number,
): { quantity: Quantity; to: number } {
  const points = pointsEnd(cursor, at);
  if (points > at) return { quantity: { value, decimals, unit: "points" }, to: points };
  const percent = percentEnd(cursor, at);
  if (percent > at) return { quantity: { value, decimals, unit: "percent" }, to: percent };
  const measured = measureEnd(cursor, at);
  return { quantity: { value, decimals, unit: measured > at ? "other" : null }, to: measured };
}

/** The words from `from` up to `to`. */
export function wordsIn(cursor: Cursor, from: number, to: number): string[] {
  return cursor.tokens
    .slice(Math.max(0, from), Math.max(0, to))
    .flatMap((token) => (token.kind === "word" ? [token.text] : []));
}
