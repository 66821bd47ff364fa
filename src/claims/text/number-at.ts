import { isDigit, isLetter, isPoint, isSpace, isThinSpace } from "./characters.js";
import type { PrintedNumber } from "./token.js";

interface Read {
  readonly number: PrintedNumber;
  readonly end: number;
  /** The digits belong to a name ("3b", "12th"): no number. */
  readonly label: boolean;
  readonly split: readonly [PrintedNumber, PrintedNumber] | null;
}

/**
 * Reads the number that starts at `from` (a digit or a decimal point): groups of three by comma or thin space, a
 * decimal point that may be raised or a comma, "0." broken by a line end, an exponent.
 */
export function numberAt(text: string, from: number, end: number): Read {
  let i = digitsEnd(text, from, end);
  let whole = text.slice(from, i);
  for (;;) {
    const group = groupEnd(text, i, end, whole);
    if (group === 0) break;
    whole += text.slice(i + 1, group);
    i = group;
  }
  const fraction = fractionAt(text, i, end, whole);
  const split = fraction.comma ? ([whole, fraction.digits].map(wholeNumber) as [PrintedNumber, PrintedNumber]) : null;
  const value = Number(`${whole || "0"}${fraction.digits ? `.${fraction.digits}` : ""}`);
  const exponent = exponentAt(text, fraction.end, end);
  const number = exponent
    ? { value: Number(`${value}e${exponent.power}`), decimals: Math.max(0, fraction.digits.length - exponent.power) }
    : { value, decimals: fraction.digits.length };
  const stop = exponent?.end ?? fraction.end;
  return { number, end: labelEnd(text, stop, end), label: labelEnd(text, stop, end) > stop, split };
}

const wholeNumber = (digits: string): PrintedNumber => ({ value: Number(digits), decimals: 0 });

function digitsEnd(text: string, from: number, end: number): number {
  let i = from;
  while (i < end && isDigit(text.charCodeAt(i))) i++;
  return i;
}

/** End of a group of three digits after a comma, a thin space or, before a word, a plain space ("1 284 hips"), or 0. */
function groupEnd(text: string, at: number, end: number, whole: string): number {
  const code = text.charCodeAt(at);
  const plain = code === 32 && whole.length <= 3 && text.charCodeAt(at + 4) === 32 && isLetter(text.charCodeAt(at + 5));
  if (whole === "" || whole.startsWith("0") || !(code === 44 || isThinSpace(code) || plain)) return 0;
  const stop = digitsEnd(text, at + 1, Math.min(end, at + 6));
  return stop === at + 4 && (whole.length <= 3 || whole.length % 3 !== 1 || code === 44) ? stop : 0;
}

function fractionAt(
  text: string,
  at: number,
  end: number,
  whole: string,
): { digits: string; end: number; comma: boolean } {
  const code = text.charCodeAt(at);
  if (at < end && isPoint(code)) {
    let from = at + 1;
    // A number broken after its point: only "0." is safe to mend, "47." may end a sentence.
    if (whole === "0") while (from < end && from < at + 4 && isSpace(text.charCodeAt(from))) from++;
    const stop = digitsEnd(text, from, end);
    if (stop > from) return { digits: text.slice(from, stop), end: stop, comma: false };
    const broken = brokenPercent(text, at + 1, end);
    if (broken) return { digits: text.slice(broken.from, broken.to), end: broken.to, comma: false };
  }
  if (at < end && code === 44) {
    const stop = digitsEnd(text, at + 1, end);
    if (stop > at + 1 && (whole === "0" || stop <= at + 3))
      return { digits: text.slice(at + 1, stop), end: stop, comma: true };
  }
  return { digits: "", end: at, comma: false };
}

/** "83." at a line end with "8%" on the next line. */
function brokenPercent(text: string, at: number, end: number): { from: number; to: number } | null {
  if (text.charCodeAt(at) !== 10 && text.charCodeAt(at) !== 13) return null;
  let from = at;
  while (from < end && from < at + 4 && isSpace(text.charCodeAt(from))) from++;
  const to = digitsEnd(text, from, Math.min(end, from + 3));
  return to > from && text.charCodeAt(to) === 37 ? { from, to } : null;
}

function exponentAt(text: string, at: number, end: number): { power: number; end: number } | null {
  const code = text.charCodeAt(at);
  if (code !== 101 && code !== 69) return null;
  const sign = text.charCodeAt(at + 1);
  if (sign !== 45 && sign !== 0x2212) return null;
  const stop = digitsEnd(text, at + 2, Math.min(end, at + 5));
  return stop > at + 2 ? { power: -Number(text.slice(at + 2, stop)), end: stop } : null;
}

/** Letters glued to the digits that make them a name: an ordinal, or a single letter as in grade 3b. */
function labelEnd(text: string, at: number, end: number): number {
  let i = at;
  while (i < end && i < at + 3 && isLetter(text.charCodeAt(i))) i++;
  const letters = text.slice(at, i).toLowerCase();
  if (["st", "nd", "rd", "th"].includes(letters)) return i;
  return letters.length === 1 && "abcde".includes(letters) ? i : at;
}
