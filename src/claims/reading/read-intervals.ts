import type { IntervalFact, Place } from "./facts.js";
import { type Cursor, percentEnd, take, textAt, wordsIn } from "./cursor.js";
import { intervalMethod } from "./interval-methods.js";
import { levelAt, type Range, rangeAt } from "./ranges.js";

/** Intervals with a label ("95% CI 75% to 94%"), and bare ones in brackets after an estimate. Takes their tokens. */
export function readIntervals(cursor: Cursor): IntervalFact[] {
  const facts: IntervalFact[] = [];
  let header: { level: number | null } | null = null;
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (cursor.taken[i]) continue;
    const label = labelAt(cursor, i);
    if (!label) continue;
    const found = afterLabel(cursor, label);
    if (found.length === 0) header = { level: label.level };
    take(cursor, label); // a count after the label starts the interval's own place behind it
    for (const fact of found) take(cursor, fact);
    facts.push(...found);
    i = (found.at(-1)?.to ?? label.to) - 1;
  }
  const level = header?.level ?? facts[0]?.level ?? null;
  return [...facts, ...bareIntervals(cursor, level, header !== null || facts.length > 0)];
}

interface Label extends Place {
  readonly level: number | null;
}

const names = new Set(["interval", "intervals", "limits", "range", "bounds"]);

/** A label from `i` on: "95% CI", "CI95", "95% Wilson confidence interval", "CI (95%)". */
function labelAt(cursor: Cursor, i: number): Label | null {
  const level = levelAt(cursor, i);
  if (level) {
    for (let at = level.to; at < level.to + 6; at++) {
      const name = nameEnd(cursor, at);
      if (name) return { from: i, to: name, level: level.level };
      const token = cursor.tokens[at];
      if (token?.kind !== "word" && token?.text !== "-" && token?.text !== "(") return null;
      if (token.text === "of") return null;
    }
    return null;
  }
  const name = nameEnd(cursor, i);
  if (!name) return null;
  const inner = textAt(cursor, name) === "(" || textAt(cursor, name) === "," ? name + 1 : name;
  const after = levelAt(cursor, inner) ?? glued(cursor, name);
  if (!after) return { from: i, to: name, level: null };
  const to = textAt(cursor, after.to) === ")" && inner > name && textAt(cursor, name) === "(" ? after.to + 1 : after.to;
  return { from: i, to, level: after.level };
}

/** "CI95" without a percent sign. */
function glued(cursor: Cursor, i: number): { level: number; to: number } | null {
  const token = cursor.tokens[i];
  if (!token?.number || token.spaced || token.number.decimals > 0 || token.number.value < 50) return null;
  return token.number.value < 100 ? { level: token.number.value / 100, to: i + 1 } : null;
}

/** One past the name of an interval at `i` and its abbreviation in brackets, or 0. */
function nameEnd(cursor: Cursor, i: number): number {
  const end = bareNameEnd(cursor, i);
  const abbreviated = end > 0 && ["(", "["].includes(textAt(cursor, end)) && bareNameEnd(cursor, end + 1) === end + 2;
  return abbreviated && [")", "]"].includes(textAt(cursor, end + 2)) ? end + 3 : end;
}

function bareNameEnd(cursor: Cursor, i: number): number {
  const text = textAt(cursor, i);
  if (text === "limits" && textAt(cursor, i + 1) === "of" && textAt(cursor, i + 2) === "agreement") return i + 3;
  if (text === "ci" || text === "cis" || text === "ci's" || text === "cri") return i + 1;
  if (text === "c" && textAt(cursor, i + 1) === "." && textAt(cursor, i + 2) === "i")
    return textAt(cursor, i + 3) === "." ? i + 4 : i + 3;
  const kind = text === "confidence" || text === "credible" || text === "credibility" || text === "uncertainty";
  return kind && names.has(textAt(cursor, i + 1)) ? i + 2 : 0;
}

const stops = new Set(["p", "κ", "kappa", "range", "sd"]);

function afterLabel(cursor: Cursor, label: Label): IntervalFact[] {
  let at = label.to;
  let from = label.from;
  for (; at < label.to + 14; at++) {
    const token = cursor.tokens[at];
    if (!token || stops.has(token.text)) return [];
    // "The 95% CI for 42 of 51 was ...": the count names what the interval is of.
    if (token.number && ["of", "/"].includes(textAt(cursor, at + 1)) && cursor.tokens[at + 2]?.number) {
      at += 2;
      from = at + 1;
      continue;
    }
    if (token.text === "(" && sharedBracket(cursor, at) > 0) {
      at = sharedBracket(cursor, at);
      from = at + 1;
      continue;
    }
    if (token.number && !cursor.taken[at]) break;
    if (token.text === "\t") return [];
    // A closed bracket means a heading, "(95% CI)": its numbers follow later.
    if (token.text === ")" || token.text === "]") return [];
  }
  const about = wordsIn(cursor, label.to, at);
  const between = textAt(cursor, at - 1) === "between";
  const first = rangeAt(cursor, between ? at - 1 : at);
  if (!first) return [];
  const facts = [fact(cursor, label, from, first, about)];
  for (let next = nextRange(cursor, first.to); next; next = nextRange(cursor, next.to))
    facts.push(fact(cursor, label, next.from, next, about));
  return facts;
}

/** The end of a bracket that holds one percentage and nothing else, "(24.1%)", or 0. */
const sharedBracket = (cursor: Cursor, at: number): number => {
  const end = cursor.tokens[at + 1]?.number ? percentEnd(cursor, at + 2) : 0;
  return end > at + 2 && textAt(cursor, end) === ")" ? end : 0;
};

const strict = new Set(["to", "-"]);
const between = new Set(["and", "v", "vs", "versus", ",", ";", "."]);

/** A further range after "and", "v" or a semicolon: "79 to 98 v 44 to 86". */
function nextRange(cursor: Cursor, i: number): (Range & { from: number }) | null {
  let at = i;
  while (at < i + 3 && between.has(textAt(cursor, at))) at++;
  if (at === i) return null;
  const range = rangeAt(cursor, at, strict);
  return range ? { ...range, from: at } : null;
}

const fact = (cursor: Cursor, label: Label, from: number, range: Range, about: readonly string[]): IntervalFact => ({
  kind: "interval", from, to: range.to, level: label.level, labelled: true, low: range.low, high: range.high, about,
  method: intervalMethod(cursor, label.from, range.to),
}); // prettier-ignore

const bracketJoints = new Set(["to", "-", ","]);

/** "87% (75-94)" and table cells "75 to 94": a range right after a percentage, in brackets or a cell of its own. */
function bareIntervals(cursor: Cursor, level: number | null, labelled: boolean): IntervalFact[] {
  const facts: IntervalFact[] = [];
  for (let i = 1; i < cursor.tokens.length; i++) {
    const open = textAt(cursor, i);
    const cell = cursor.row && open === "\t";
    if (open !== "(" && open !== "[" && open !== ";" && open !== "," && !cell) continue;
    const before = textAt(cursor, i - 1);
    const afterEffect = (open === "(" || open === "[") && effectBefore(cursor, i - 1);
    const afterEstimate =
      ["%", "cent", "percent"].includes(before) ||
      (cell && i > 1) ||
      afterEffect ||
      (open === "[" && fraction(cursor, i - 1));
    if (!afterEstimate) continue;
    const range = rangeAt(cursor, i + 1, open === "[" || open === "(" ? bracketJoints : strict);
    if (!range || range.low.value > range.high.value) continue;
    const close = textAt(cursor, range.to);
    const closed = cell ? close === "\t" || close === "" : [")", "]", ";", ","].includes(close);
    if (!closed || (!labelled && !afterEffect && !looksLikeInterval(range))) continue;
    if (fraction(cursor, i - 1) && !(range.high.value <= 1 && range.high.decimals >= 2)) continue;
    const place = { from: i + 1, to: range.to };
    take(cursor, place);
    facts.push({
      kind: "interval",
      ...place,
      level,
      labelled: false,
      low: range.low,
      high: range.high,
      about: [],
      method: null,
    });
  }
  return facts;
}

/** Within 0 to 100: a reference list such as [12-14] is told apart later, by whether it holds the estimate. */
const looksLikeInterval = (range: Range): boolean => range.low.value >= 0 && range.high.value <= 100;

/** "52/60 (0.87": a share printed with two decimals or more right behind its count. */
const fraction = (cursor: Cursor, at: number): boolean => {
  const number = cursor.tokens[at]?.number;
  return (
    number !== null &&
    number !== undefined &&
    number.decimals >= 2 &&
    number.value <= 1 &&
    textAt(cursor, at - 1) === "("
  );
};

const effects = new Set(["ratio", "or", "rr", "hr", "aor", "ahr", "κ", "kappa", "nnt"]);

/** A number that a label of an effect precedes: "OR = 5.5 [1.1 to 31.0]", "odds ratio for infection was 0.48 (0.55 to 1.21)". */
function effectBefore(cursor: Cursor, at: number): boolean {
  if (!cursor.tokens[at]?.number) return false;
  for (let i = at - 1; i >= at - 12 && i >= 0; i--) {
    const token = cursor.tokens[i]!;
    if (token.number || [";", ")", "(", "male", "female", "men", "boys"].includes(token.text)) return false;
    if (effects.has(token.text)) return token.text !== "or" || token.capitals;
  }
  return false;
}
