import type { LimitFact } from "./facts.js";
import { type Cursor, quantityAt, take, textAt, wordsIn } from "./cursor.js";
import { levelAt } from "./ranges.js";

const limits = new Set(["limit", "bound"]);

/** One-sided limits: "upper one-sided 95% confidence limit 5%", "upper limit of the 95% CI, 14%". Takes their tokens. */
export function readLimits(cursor: Cursor): LimitFact[] {
  const facts: LimitFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (!limits.has(textAt(cursor, i)) || cursor.taken[i]) continue;
    const found = limitAround(cursor, i);
    if (!found) continue;
    take(cursor, found);
    facts.push(found);
  }
  return facts;
}

function limitAround(cursor: Cursor, i: number): LimitFact | null {
  let from = i;
  while (from > 0 && i - from < 9 && belongs(cursor, from - 1)) from--;
  let at = i + 1;
  let level: number | null = null;
  for (let j = from; j < i; j++) level = levelAt(cursor, j)?.level ?? level;
  for (; at < i + 14; at++) {
    const after = levelAt(cursor, at);
    if (after && namesInterval(cursor, after.to)) {
      level = after.level;
      at = after.to - 1;
      continue;
    }
    const token = cursor.tokens[at];
    if (!token || token.text === ")") return null;
    if (token.number) break;
  }
  const words = wordsIn(cursor, from, at);
  const limit = quantityAt(cursor, at);
  const side = words.includes("upper") ? "upper" : words.includes("lower") ? "lower" : null;
  const one = words.some((word) => word.startsWith("one-sided") || word.startsWith("one-tailed"));
  const two = words.some((word) => word.startsWith("two-sided")) || words.includes("interval") || words.includes("ci");
  const about = one || level !== null || words.includes("confidence");
  if (!limit || !about || (side === null && !one)) return null;
  return {
    kind: "limit",
    from,
    to: limit.to,
    side,
    level,
    oneSided: one ? true : two ? false : null,
    limit: limit.quantity,
  };
}

const owned = new Set(
  "upper lower one-sided one-tailed two-sided confidence exact % percent per cent the an a".split(" "),
);
const belongs = (cursor: Cursor, i: number): boolean =>
  !cursor.taken[i] && (owned.has(textAt(cursor, i)) || levelAt(cursor, i) !== null);

const namesInterval = (cursor: Cursor, i: number): boolean =>
  ["confidence", "ci", "one-sided", "two-sided", "upper", "lower"].includes(textAt(cursor, i));
