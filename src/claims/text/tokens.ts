import { tagAt } from "./blocks.js";
import { isApostrophe, isDash, isDigit, isLetter, isPoint, isSpace, plainMark } from "./characters.js";
import { numberAt } from "./number-at.js";
import { spelledNumber } from "./number-words.js";
import type { PrintedNumber, Token } from "./token.js";

/** Words that a digit may follow without a space and still be words of their own: CI95, n24, p0.04. */
const beforeDigits = new Set(["ci", "p", "n", "or", "rr", "k", "κ", "sd", "kappa"]);
const entities: Record<string, string> = {
  "&nbsp;": " ", "&lt;": "<", "&gt;": ">", "&amp;": "&", "&ndash;": "-", "&mdash;": "—", "&minus;": "-", "&le;": "≤",
  "&ge;": "≥", "&deg;": "°", "&plusmn;": "±", "&kappa;": "κ", "&chi;": "χ", "&thinsp;": " ", "&middot;": "·", "&times;": "×",
}; // prettier-ignore

/**
 * Splits a stretch of text into numbers, words and marks, each with its place. One pass, no regular expression over the
 * text, so the time grows with the length and with nothing else.
 * @param text the whole text, so that places count from its start
 * @param start first character of the stretch
 * @param end one past its last
 */
export function tokensOf(text: string, start: number, end: number): Token[] {
  const tokens: Token[] = [];
  let spaced = true;
  let i = start;
  while (i < end) {
    const code = text.charCodeAt(i);
    if (isSpace(code) && code !== 9) {
      spaced = true;
      i++;
      continue;
    }
    const tag = code === 60 ? tagAt(text, i) : null;
    if (tag && tag.end <= end) {
      if (tag.name === "td" || tag.name === "th") tokens.push(mark("\t", i, tag.end, true));
      spaced = spaced || tag.name === "td" || tag.name === "th" || tag.name === "br";
      i = tag.end;
      continue;
    }
    const token = tokenAt(text, i, end, spaced, tokens.at(-1));
    if (token) tokens.push(token);
    spaced = token === null || token.text === "\t";
    i = token ? token.end : entityEnd(text, i);
  }
  return withSpelledNumbers(tokens);
}

function tokenAt(text: string, i: number, end: number, spaced: boolean, before: Token | undefined): Token | null {
  const code = text.charCodeAt(i);
  const next = text.charCodeAt(i + 1);
  if (isDigit(code) || (isPoint(code) && isDigit(next) && (spaced || before?.kind !== "number")))
    return numberToken(text, i, i, end, 1, spaced);
  if (isDash(code) && code !== 0xad && isSign(text, i, spaced, before))
    return numberToken(text, i, i + 1, end, -1, spaced);
  if (isLetter(code)) return wordToken(text, i, end, spaced);
  if (code === 38) {
    const stop = entityEnd(text, i);
    const plain = entities[text.slice(i, stop).toLowerCase()];
    if (plain === " ") return null;
    if (plain)
      return isLetter(plain.charCodeAt(0)) ? word(plain, i, stop, spaced, false) : mark(plain, i, stop, spaced);
  }
  const pair = text.slice(i, i + 3) === "+/-" ? 3 : text.slice(i, i + 2) === "+-" ? 2 : 0;
  if (pair > 0) return mark("±", i, i + pair, spaced);
  if (code === 60 && next === 61) return mark("≤", i, i + 2, spaced);
  if (code === 62 && next === 61) return mark("≥", i, i + 2, spaced);
  return mark(plainMark(text[i]!), i, i + 1, spaced);
}

/** A dash is a sign when a digit follows it and no number ends where it starts ("75-94" is a range, "(-15 to 46)" is not). */
function isSign(text: string, i: number, spaced: boolean, before: Token | undefined): boolean {
  const next = text.charCodeAt(i + 1);
  if (!(isDigit(next) || (isPoint(next) && isDigit(text.charCodeAt(i + 2))))) return false;
  if (!before) return true;
  const closes = before.kind === "number" || before.text === "%" || before.text === "°" || before.text === ")";
  if (closes && !spaced) return false;
  return before.kind !== "word" || spaced;
}

function numberToken(
  text: string,
  start: number,
  from: number,
  end: number,
  sign: 1 | -1,
  spaced: boolean,
): Token | null {
  const read = numberAt(text, from, end);
  if (read.label) return word(text.slice(start, read.end).toLowerCase(), start, read.end, spaced, false);
  const number: PrintedNumber = { value: sign * read.number.value, decimals: read.number.decimals };
  return {
    kind: "number", text: text.slice(start, read.end), start, end: read.end, spaced, capitals: false, number, spelled: false, split: read.split,
  }; // prettier-ignore
}

/** Longer runs of letters are no words; cut, they cost no more than their length. */
const longestWord = 100;

function wordToken(text: string, start: number, end: number, spaced: boolean): Token {
  const pieces: string[] = [];
  const stop = Math.min(end, start + longestWord);
  let from = start;
  let i = start;
  const cut = (next: number, joint: string): void => {
    pieces.push(text.slice(from, i), joint);
    from = next;
  };
  for (; i < stop; i++) {
    const code = text.charCodeAt(i);
    if (isLetter(code)) continue;
    if (isApostrophe(code) && isLetter(text.charCodeAt(i + 1))) cut(i + 1, "'");
    else if (code === 0xad) cut(i + 1, "");
    else if (isDash(code) && isLetter(text.charCodeAt(i + 1)) && code !== 0x2212) cut(i + 1, "-");
    else if (isDash(code) && code !== 0x2212 && brokenWord(text, i, end)) {
      const next = brokenWord(text, i, end);
      cut(next, "");
      i = next - 1;
    } else if (!isDigit(code) || beforeDigits.has(text.slice(start, i).toLowerCase())) break;
  }
  const plain = pieces.join("") + text.slice(from, i);
  const capitals = plain === plain.toUpperCase() && plain !== plain.toLowerCase();
  return word(plain.toLowerCase(), start, i, spaced, capitals);
}

/** Where the rest of a word goes on when a hyphen ends its line, or 0. */
function brokenWord(text: string, at: number, end: number): number {
  if (text.charCodeAt(at + 1) !== 10) return 0;
  const next = text.charCodeAt(at + 2);
  return at + 2 < end && next >= 97 && next <= 122 ? at + 2 : 0;
}

function entityEnd(text: string, at: number): number {
  if (text.charCodeAt(at) !== 38) return at + 1;
  for (let i = at + 1; i < at + 10 && i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 59) return entities[text.slice(at, i + 1).toLowerCase()] ? i + 1 : at + 1;
    if (!isLetter(code)) break;
  }
  return at + 1;
}

const word = (text: string, start: number, end: number, spaced: boolean, capitals: boolean): Token => ({
  kind: "word", text, start, end, spaced, capitals, number: null, spelled: false, split: null,
}); // prettier-ignore
const mark = (text: string, start: number, end: number, spaced: boolean): Token => ({
  kind: "mark", text, start, end, spaced, capitals: false, number: null, spelled: false, split: null,
}); // prettier-ignore

/** Puts one number in the place of each run of words that spells one. */
function withSpelledNumbers(tokens: readonly Token[]): Token[] {
  const words = tokens.map((token) => (token.kind === "word" ? token.text : ""));
  const result: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const spelled = words[i] ? spelledNumber(words, i) : null;
    if (!spelled) {
      result.push(token);
      continue;
    }
    const end = tokens[i + spelled.words - 1]!.end;
    result.push({ ...token, kind: "number", end, spelled: true, number: { value: spelled.value, decimals: 0 } });
    i += spelled.words - 1;
  }
  return result;
}
