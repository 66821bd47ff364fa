import { looksLikeInitials } from "./table/looks-like.js";
import { looseDate, isoDate, plainDate } from "./values/read-date.js";

/** Replaces every quarantined word in a text that may be shown. */
export type Redact = (text: string) => string;

export const withheld = "[withheld]";

/**
 * Collects what identifier columns hold, so that no part of it can be shown from another place: the notes, a line under
 * the table, a question. Words of names count from three letters, numbers from four digits, initials where they stand
 * in capitals as a word, dates in every spelling.
 */
export function quarantine(texts: Iterable<string>): Redact {
  const words = new Set<string>();
  const initials = new Set<string>();
  const days = new Set<string>();
  const phrases: string[] = [];
  for (const text of texts) {
    const dates = daysOf(text);
    for (const day of dates) days.add(day);
    if (dates.length > 0) continue;
    const plain = text.toLowerCase();
    let kept = false;
    for (const word of plain.match(part) ?? [])
      if (word.length >= 4 || (word.length === 3 && !digit.test(word))) {
        words.add(word);
        kept = true;
      }
    if (kept) continue;
    if (/^\P{N}{2,9}$/u.test(text) && looksLikeInitials(text.toUpperCase()))
      initials.add(text.toUpperCase().replace(/[. -]/g, ""));
    // Without a word of its own ("12-3", "A B") the text is looked for as it stands.
    if (plain.length >= 3 && phrases.length < most) phrases.push(plain);
  }
  if (words.size + initials.size + days.size + phrases.length === 0) return (text) => text;
  const hidden = (word: string): boolean => words.has(word.toLowerCase()) || initials.has(word);
  const suspect = (text: string): boolean =>
    ascii.test(text) ? someAsciiWord(text, hidden) : (text.match(part) ?? []).some(hidden);
  return (text) => {
    let out = text;
    if (days.size > 0 && dateSigns.test(out))
      out = out.replace(anyDate, (date) => (daysOf(date).some((day) => days.has(day)) ? withheld : date));
    if (suspect(out)) out = out.replace(part, (word) => (hidden(word) ? withheld : word));
    for (const phrase of phrases)
      if (out.toLowerCase().includes(phrase)) out = out.split(new RegExp(literally(phrase), "i")).join(withheld);
    return out;
  };
}

/** Whether a word of an ASCII text passes; makes no list of its words, as most of 100,000 notes hide nothing. */
function someAsciiWord(text: string, passes: (word: string) => boolean): boolean {
  let from = -1;
  for (let i = 0; i <= text.length; i++) {
    const code = text.charCodeAt(i);
    const inside = (code >= 48 && code <= 57) || (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
    if (inside && from < 0) from = i;
    if (inside || from < 0) continue;
    if (passes(text.slice(from, i))) return true;
    from = -1;
  }
  return false;
}

const ascii = /^[\x20-\x7e\s]*$/;
const part = /[\p{L}\p{N}]+/gu;
const digit = /\d/;
const dateSigns = /\d[./-] ?\d|\d[ .-]+\p{L}{3}|\p{L}{3} \d/u;
const anyDate =
  /\d{1,4}[./-] ?\d{1,2}[./-] ?\d{1,4}|\d{1,2}(?:st|nd|rd|th)?[ ./-]+\p{L}{3,9}\.?,?[ ./-]*\d{2,4}|\p{L}{3,9}\.? \d{1,2},? \d{4}/gu;
const convention = 2049;
const most = 2000;

/** The days that a text can mean, both orders; none for any other text. */
function daysOf(text: string): string[] {
  if (text.length > 30 || !digit.test(text)) return [];
  const day = plainDate(text, convention);
  if (day) return [day.slice(2)];
  const loose = looseDate(text, convention);
  if (!loose) return [];
  const both = [isoDate(loose.year, loose.second, loose.first), isoDate(loose.year, loose.first, loose.second)];
  return both.flatMap((iso) => (iso ? [iso.slice(2)] : []));
}

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
