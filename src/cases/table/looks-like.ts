import { isPlainWord } from "../plain-words.js";

const particle = /^(van|von|der|den|de|di|da|del|la|le|al|el|bin|ibn|y|of|zu|ten|ter|mac|mc|o)$/i;
const tail = /^\p{L}{1,2}\d{0,2}$|^\d{1,2}$/u;

/**
 * Whether a text looks like a name of a person or of a place: one to four words, one of four letters or more of which
 * nothing else is known; an initial or a small number may follow. Small letters count only where `small` says so.
 */
export function looksLikeName(text: string, small = false): boolean {
  if (text.length > 40) return false;
  const words = text.split(/[\s,.()&/]+/).filter((word) => word !== "");
  if (words.length === 0 || words.length > 5) return false;
  let unknown = 0;
  for (const word of words) {
    if (/^\p{L}[\p{L}'’-]{2,}$/u.test(word)) {
      if (/^\p{Ll}/u.test(word) && !small && !particle.test(word)) return false;
      if (word.length >= 4 && !word.split(/['’-]/).every((part) => part === "" || isPlainWord(part))) unknown++;
    } else if (!tail.test(word) && !particle.test(word)) return false;
  }
  return unknown > 0;
}

const letters = /^(\p{Lu}[. -]{0,2}){1,3}\p{Lu}\.?$|^\p{Lu}\p{Ll}?\p{Lu}\p{Ll}{0,2}$|^\p{Ll}{2,3}$/u;
const roman = /^[IVX]+$/i;
const abbreviation =
  /^(op|or|ok|na|nd|no|ap|ct|mri|mr|ga|la|lt|rt|li|re|er|ir|ff|abd|add|cr|crif|crpp|orif|mua|pp|im|kw|rta|rtc|mvc|mva|nai|foosh|fall|ao|sh|ja|yes|dr|sr|jr|icu|opd|ed|ae|ent|gp|sho|spr|st|fy|cons|reg|nil|low|mid|top|end|old|new|all|none?|mo|tu|di|mi|do|fr|sa|so|mon|tue|wed|thu|fri|sat|sun|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|prox|dist|cast|pop|tens|esin|ten|fx|sx|rx|tx|hx|dx|cm|mm|deg)$/i;

/** Whether a text looks like the initials of a person: "LB", "L.B.", "L. M. B.", "LeB", "lb". */
export function looksLikeInitials(text: string): boolean {
  return text.length <= 9 && letters.test(text) && !roman.test(text) && !abbreviation.test(text.replace(/[. -]/g, ""));
}

/** Letters in front of a number: "LB01", "CQ-2", "ABC1234"; undefined for any other text. */
export function initialsOf(text: string): string | undefined {
  const match = /^(\p{L}{2,3})[ ._-]?\d{1,6}$/u.exec(text);
  return match && !roman.test(match[1]!) ? match[1]!.toUpperCase() : undefined;
}

/** One to four letters beside six or eight digits that can be a day of the calendar, in any order, spaced or not. */
export function holdsBirthCode(text: string): boolean {
  const plain = text.replace(/[\s_./-]/g, "");
  const match = /^(\p{L}{1,4})?(\d{6}|\d{8})(\p{L}{1,4})?$/u.exec(plain);
  if (!match || (match[1] === undefined && match[3] === undefined)) return false;
  const date = match[2]!;
  const n = (from: number, to: number): number => Number(date.slice(from, to));
  const day = (d: number, m: number): boolean => d >= 1 && d <= 31 && m >= 1 && m <= 12;
  if (date.length === 6) return day(n(0, 2), n(2, 4)) || day(n(4, 6), n(2, 4)) || day(n(2, 4), n(0, 2));
  const year = (y: number): boolean => y >= 1950 && y <= 2049;
  if (year(n(4, 8))) return day(n(0, 2), n(2, 4)) || day(n(2, 4), n(0, 2));
  return year(n(0, 4)) && day(n(6, 8), n(4, 6));
}

/** Whether numbers follow each other, however many digits they have, as study numbers do: most steps are small. */
export function isSequence(texts: readonly string[]): boolean {
  const numbers = texts.map((text) => Number(text.replace(/\D/g, ""))).toSorted((a, b) => a - b);
  const steps = numbers.slice(1).filter((number, i) => number - numbers[i]! <= 20);
  return steps.length >= (numbers.length - 1) * 0.7;
}
