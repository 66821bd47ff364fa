import type { PartFact, WholeFact } from "./facts.js";
import { type Cursor, countAt, percentEnd, take, textAt } from "./cursor.js";
import { countsOthers, isCaseUnit, measures, unitAfter } from "./units.js";

/** Whole numbers left over that count something: wholes ("the 48 fractures", "n = 30") and parts ("9 grade I"). */
export function readParts(cursor: Cursor): (PartFact | WholeFact)[] {
  const facts: (PartFact | WholeFact)[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const value = countAt(cursor, i);
    if (value === null || measures(cursor, i + 1) || countsOthers(cursor, i + 1)) continue;
    if (textAt(cursor, i + 1) === "/" || textAt(cursor, i - 1) === "/" || textAt(cursor, i + 1) === "-") continue;
    if (cursor.tokens[i]!.spelled && value === 1 && pronoun(cursor, i)) continue;
    if (opensRange(cursor, i)) continue;
    const place = { from: i, to: i + 1 };
    take(cursor, place);
    const unit = unitAfter(cursor, i + 1);
    const leads = value > 1 && leadsAt(cursor, i);
    if (leads || isCaseUnit(unit) || afterN(cursor, i)) facts.push({ kind: "whole", ...place, value, unit, leads });
    else facts.push({ kind: "part", ...place, value, noun: nounAfter(cursor, i + 1) });
  }
  return facts;
}

/** The 10 of "10 to 16 years". */
const opensRange = (cursor: Cursor, i: number): boolean =>
  ["to", "-", "and", "or"].includes(textAt(cursor, i + 1)) &&
  cursor.tokens[i + 2]?.kind === "number" &&
  measures(cursor, i + 3);

const pronoun = (cursor: Cursor, i: number): boolean =>
  ["no", "the", "this", "that", "any", "each", "every", "at"].includes(textAt(cursor, i - 1)) ||
  textAt(cursor, i + 1) === "of" ||
  (textAt(cursor, i - 2) === "a" && [".", ",", ";", ")", ""].includes(textAt(cursor, i + 1)));

const afterN = (cursor: Cursor, i: number): boolean => textAt(cursor, i - 1) === "=" && textAt(cursor, i - 2) === "n";

const opening = new Set(["of", "in", "among", "amongst"]);
const determiners = new Set(
  "the these those our all a total of out first second third fourth next last remaining other".split(" "),
);
const partitions = new Set(
  "comprised comprise comprising consisted consist included were was fell divided classified graded".split(" "),
);

/** "Of the 48 fractures," at the start of a sentence or clause, or "The 48 fractures comprised". */
function leadsAt(cursor: Cursor, i: number): boolean {
  let at = i - 1;
  let opened = false;
  while (at >= 0 && i - at < 6 && (determiners.has(textAt(cursor, at)) || opening.has(textAt(cursor, at)))) {
    opened ||= opening.has(textAt(cursor, at));
    at--;
  }
  const starts = at < 0 || [",", ";", ":", ".", "and"].includes(textAt(cursor, at)) || at > i - 1;
  if (opened && starts) return !hasShare(cursor, i);
  if (!isCaseUnit(unitAfter(cursor, i + 1))) return false;
  for (let next = i + 1; next < i + 8; next++) {
    const token = cursor.tokens[next];
    if (!token || token.number) return false;
    if (partitions.has(token.text) && at < 0) return true;
    if (["comprised", "comprising", "consisted", ":"].includes(token.text)) return true;
    if (token.text === "(" && listInBrackets(cursor, next)) return true;
    if (token.text === ",") return false;
  }
  return false;
}

/** "In total 9 (56%) had a plate": a part with its share, and no whole. */
const hasShare = (cursor: Cursor, i: number): boolean =>
  ["(", "["].includes(textAt(cursor, i + 1)) && percentEnd(cursor, i + 3) > i + 3;

/** "48 fractures (9 grade I, 17 grade II ...": a bracket that opens with a count. */
const listInBrackets = (cursor: Cursor, at: number): boolean => {
  const value = countAt(cursor, at + 1);
  const next = cursor.tokens[at + 2];
  return value !== null && next?.kind === "word" && !measures(cursor, at + 2) && next.text !== "to";
};

/** The few words that say what a part is: "grade I", "boys", "were excluded". */
function nounAfter(cursor: Cursor, from: number): string | null {
  const words: string[] = [];
  for (let at = from; at < from + 4; at++) {
    const token = cursor.tokens[at];
    if (token?.kind !== "word" || token.text === "and") break;
    words.push(token.text);
  }
  return words.length > 0 ? words.join(" ") : null;
}
