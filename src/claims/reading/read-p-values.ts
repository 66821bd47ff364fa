import type { PrintedNumber } from "../text/token.js";
import type { PFact } from "./facts.js";
import { type Cursor, numberAt, take, textAt, wordsIn } from "./cursor.js";

const marks: Record<string, PFact["relation"]> = {
  "=": "=",
  "<": "<",
  ">": ">",
  "≤": "≤",
  "≥": "≥",
  "~": "=",
  "≈": "=",
};
const equal = new Set(["of", "was", "is", "equals", "equal", ":", ","]);
const below = new Set(["less", "below", "under", "lower", "smaller"]);
const above = new Set(["greater", "above", "over", "more", "larger", "exceeded"]);

/** p values in the usual spellings: "p = 0.046", "P=.031", "p value of 0.03", "p < 0.05", "p = NS". Takes their tokens. */
export function readPValues(cursor: Cursor): PFact[] {
  const facts: PFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (cursor.taken[i]) continue;
    const found = isP(cursor, i) ? pAt(cursor, i) : bareNotSignificant(cursor, i);
    if (!found) continue;
    take(cursor, found);
    facts.push(found);
    for (let next = listed(cursor, found, facts.at(-1)!.to); next; next = listed(cursor, found, next.to)) {
      take(cursor, next);
      facts.push(next);
    }
  }
  return facts;
}

const names = new Set(["p", "p-value", "p-values", "p-trend", "ptrend"]);
const isP = (cursor: Cursor, i: number): boolean => names.has(textAt(cursor, i));

function pAt(cursor: Cursor, i: number): PFact | null {
  let relation: PFact["relation"] | null = null;
  for (let at = i + 1; at < i + 16; at++) {
    const token = cursor.tokens[at];
    if (!token) return null;
    if (marks[token.text]) relation = marks[token.text]!;
    else if (below.has(token.text)) relation = "<";
    else if (above.has(token.text)) relation = ">";
    else if (equal.has(token.text)) relation ??= "=";
    else if (token.text === "not" && textAt(cursor, at + 1).startsWith("significant"))
      return notSignificant(cursor, i, at + 2);
    else if (
      token.text === "ns" ||
      (token.text === "n" && textAt(cursor, at + 1) === "." && textAt(cursor, at + 2).startsWith("s"))
    )
      return notSignificant(cursor, i, token.text === "ns" ? at + 1 : at + 3);
    const number = numberAt(cursor, at);
    if (number) {
      // "p 0.03" needs no sign; "p values of 3 tests" and "P3" are none.
      const value = textAt(cursor, i) !== "p" || textAt(cursor, i + 1).startsWith("value");
      if (relation === null && (number.decimals === 0 || (number.value > 1 && !value))) return null;
      if (number.decimals === 0 && number.value !== 0 && number.value !== 1) return null;
      return withPower(cursor, {
        kind: "p",
        from: i,
        to: at + 1,
        relation: relation ?? "=",
        number,
        about: wordsIn(cursor, i, at),
      });
    }
    if (token.kind !== "word" && !marks[token.text] && !"(),:-[]".includes(token.text)) return null;
  }
  return null;
}

/** "3.1 × 10-4". */
function withPower(cursor: Cursor, fact: PFact): PFact {
  const at = fact.to;
  if (!["×", "x", "*"].includes(textAt(cursor, at)) || cursor.tokens[at + 1]?.number?.value !== 10) return fact;
  const caret = textAt(cursor, at + 2) === "^" ? at + 3 : at + 2;
  const dash = textAt(cursor, caret) === "-" ? caret + 1 : caret;
  const power = Math.abs(cursor.tokens[dash]?.number?.value ?? 0);
  if (power === 0 || power > 300) return fact;
  const { value, decimals } = fact.number!;
  const number: PrintedNumber = { value: Number(`${value}e-${power}`), decimals: decimals + power };
  return { ...fact, to: dash + 1, number };
}

const notSignificant = (cursor: Cursor, from: number, to: number): PFact => ({
  kind: "p", from, to, relation: "not significant", number: null, about: wordsIn(cursor, from, to),
}); // prettier-ignore

/** "(NS)" or "; NS" on its own. */
function bareNotSignificant(cursor: Cursor, i: number): PFact | null {
  const token = cursor.tokens[i]!;
  if (token.text !== "ns" || !token.capitals) return null;
  return ["(", ";", ",", "=", "["].includes(textAt(cursor, i - 1)) ? notSignificant(cursor, i, i + 1) : null;
}

/** "p = 0.03 and 0.41, respectively": further values under the same label. */
function listed(cursor: Cursor, first: PFact, at: number): PFact | null {
  if (first.relation !== "=" || !["and", ",", "v", "vs"].includes(textAt(cursor, at))) return null;
  const from = ["and"].includes(textAt(cursor, at + 1)) ? at + 2 : at + 1;
  const number = numberAt(cursor, from);
  if (!number || number.decimals < 2 || number.value < 0 || number.value > 1) return null;
  const follows = textAt(cursor, from + 1);
  if (![")", ",", ";", "and", "", ".", "respectively", "]"].includes(follows)) return null;
  return { ...first, from, to: from + 1, number };
}
