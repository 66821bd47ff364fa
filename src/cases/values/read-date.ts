import { readMissing } from "./read-missing.js";
import {
  ask,
  leftOut,
  notKnown,
  unreadable,
  type Choice,
  type ColumnFacts,
  type Reader,
  type Reading,
} from "./reading.js";

const monthNames = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const otherNames: Readonly<Record<string, number>> = {
  mrz: 3,
  mär: 3,
  mae: 3,
  jän: 1,
  jae: 1,
  feb: 2,
  mai: 5,
  okt: 10,
  dez: 12,
  fev: 2,
  fév: 2,
  avr: 4,
  aou: 8,
  aoû: 8,
  ene: 1,
  abr: 4,
  ago: 8,
  dic: 12,
};

/** The parts of a slash date before its order is known. */
export interface LooseDate {
  readonly first: number;
  readonly second: number;
  readonly year: number;
}

/** Two-digit years belong to the hundred years that end next year. */
function fullYear(text: string, latestYear: number): number {
  const year = Number(text);
  if (text.length > 2) return year;
  const century = Math.floor(latestYear / 100) * 100;
  return century + year > latestYear + 1 ? century - 100 + year : century + year;
}

/** "03/04/2021", "3.4.21", "4-17-2021": two numbers whose order must be proved, and a year. */
export function looseDate(text: string, latestYear: number): LooseDate | undefined {
  const match =
    /^(\d{1,2})[./-] ?(\d{1,2})[./-] ?(\d{4}|\d{2})(?:[ ,T]+\d{1,2}[:.]\d{2}(?::\d{2})?(?: ?[ap]m)?)?$/i.exec(text);
  if (!match) return undefined;
  return { first: Number(match[1]), second: Number(match[2]), year: fullYear(match[3]!, latestYear) };
}

/** A date whose order is plain: year first, or the month by name. */
export function plainDate(text: string, latestYear: number): string | undefined {
  // Most texts of a sheet are no date; this much is seen at once.
  if (text.length < 6 || !/[\dZ]$/.test(text)) return undefined;
  const yearFirst =
    /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})(?:[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?Z?)?$/.exec(text) ??
    /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(text);
  if (yearFirst) return isoDate(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]));
  const dayName = /^(?:\p{L}+,? )?(\d{1,2})(?:st|nd|rd|th)?[ ./-]*(\p{L}{3,9})\.?,?[ ./-]*(\d{4}|\d{2})$/u.exec(text);
  if (dayName) return isoDate(fullYear(dayName[3]!, latestYear), monthOf(dayName[2]!), Number(dayName[1]));
  const nameDay = /^(\p{L}{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/u.exec(text);
  return nameDay ? isoDate(Number(nameDay[3]), monthOf(nameDay[1]!), Number(nameDay[2])) : undefined;
}

function monthOf(name: string): number {
  const start = name.toLowerCase().slice(0, 3);
  return otherNames[start] ?? monthNames.indexOf(start) + 1;
}

/** ISO date of a real day, else undefined. */
export function isoDate(year: number, month: number, day: number): string | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (year < 1800 || year > 2200 || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  return date.toISOString().slice(0, 10);
}

/** Day number of a sheet as a date: counted from 1900 (with its false leap day) or from 1904. */
export function serialDate(serial: number, system: 1900 | 1904 = 1900): string {
  const days = Math.floor(serial) + (system === 1904 ? 1462 : 0);
  return new Date(Date.UTC(1899, 11, 30) + days * 86_400_000).toISOString().slice(0, 10);
}

/** A date. Day and month are told apart only by proof in the same column; otherwise the doubtful cells are asked. */
export const readDate: Reader = (text, facts, cell) => {
  if (cell.date !== undefined) return { value: { kind: "date", iso: cell.date } };
  const gone = readMissing(text);
  if (gone) return gone;
  const iso = plainDate(text, facts.latestYear);
  if (iso) return { value: { kind: "date", iso }, ...(iso === text ? {} : { why: `the date ${iso}` }) };
  const loose = looseDate(text, facts.latestYear);
  if (loose) return ordered(text, loose, facts.dateOrder);
  const named = onWeekday(text, facts.latestYear);
  if (named)
    return { value: { kind: "date", iso: named }, why: `the date ${named}, the only order that fits the weekday` };
  if (/^\d{5}(\.\d+)?$/.test(text)) return serial(text, facts.span);
  const partial = /^(?:(\d{4})|(\p{L}{3,9})\.?[ -]'?(\d{4}|\d{2})|(\d{1,2})\/(\d{4}))$/u.exec(text);
  if (partial) return ask("partial", text, `"${text}" is not a whole date: which day?`, leftOut);
  return withoutYear(text, facts) ?? unreadable(text, "a date");
};

/** "3/4" beside dates whose order is proved: the years of the column are offered. */
function withoutYear(text: string, { dateOrder, years = [] }: ColumnFacts): Reading | undefined {
  const match = /^(\d{1,2})[./-](\d{1,2})\.?$/.exec(text);
  if (!match || (dateOrder !== "dayFirst" && dateOrder !== "monthFirst")) return undefined;
  const [first, second] = [Number(match[1]), Number(match[2])];
  const [day, month] = dateOrder === "dayFirst" ? [first, second] : [second, first];
  if (isoDate(2000, month, day) === undefined || years.length > 7) return undefined;
  const choices = years.map((year): Choice[] => {
    const iso = isoDate(year, month, day);
    return iso ? [{ label: iso, value: { kind: "date", iso } }] : [];
  });
  return ask("year", text, `"${text}" is a day and a month without a year: which year?`, [
    ...choices.flat(),
    ...leftOut,
  ]);
}

const weekdays = ["su|so|di|do", "mo|lu", "tu|di|ma", "we|mi|me", "th|do|je|ju", "fr|ve|vi", "sa"];

/** "Mon 3/4/18": the weekday settles which number is the day, when it fits one order only. */
function onWeekday(text: string, latestYear: number): string | undefined {
  const match = /^(\p{L}{2,10})\.?,? +(.+)$/u.exec(text);
  const loose = match ? looseDate(match[2]!, latestYear) : undefined;
  if (!match || !loose) return undefined;
  const dates = [isoDate(loose.year, loose.second, loose.first), isoDate(loose.year, loose.first, loose.second)];
  const fit = new Set(
    dates.filter((iso) => iso && new RegExp(`^(${weekdays[new Date(iso).getUTCDay()]})`, "i").test(match[1]!)),
  );
  return fit.size === 1 ? [...fit][0] : undefined;
}

function ordered(text: string, { first, second, year }: LooseDate, order: string): Reading {
  const dayFirst = isoDate(year, second, first);
  const monthFirst = isoDate(year, first, second);
  if (!dayFirst && !monthFirst) return unreadable(text, "a day of the calendar");
  const found = (iso: string, why: string): Reading => ({
    value: { kind: "date", iso },
    why: `the date ${iso}, ${why}`,
  });
  if (dayFirst === monthFirst) return found(dayFirst!, "in either order");
  if (!monthFirst) return found(dayFirst!, "day first");
  if (!dayFirst) return found(monthFirst, "month first");
  if (order === "dayFirst") return found(dayFirst, "day first, as other cells of the column prove");
  if (order === "monthFirst") return found(monthFirst, "month first, as other cells of the column prove");
  const choices: Choice[] = [
    { label: "day first", value: { kind: "date", iso: dayFirst } },
    { label: "month first", value: { kind: "date", iso: monthFirst } },
  ];
  if (order === "unproved")
    return ask("order", "", "no date of this column proves whether the day or the month comes first: which?", choices);
  return ask("order", text, `"${text}" can be ${dayFirst} or ${monthFirst}, and the column holds both orders: which?`, [
    ...choices,
    notKnown,
  ]);
}

/** A day number is believed when it falls among the column's other dates; 1904 counting is four years and a day later. */
function serial(text: string, span: { readonly first: string; readonly last: string } | undefined): Reading {
  const [early, late] = [serialDate(Number(text), 1900), serialDate(Number(text), 1904)];
  const inside = (iso: string): boolean =>
    span !== undefined && shiftYears(span.first, -1) <= iso && iso <= shiftYears(span.last, 1);
  if (inside(early))
    return { value: { kind: "date", iso: early }, why: `day number, the date ${early} (counted from 1900)` };
  return ask("serial", text, `"${text}" is a day number: counted from 1900 it is ${early}, from 1904 ${late}: which?`, [
    { label: early, value: { kind: "date", iso: early } },
    { label: late, value: { kind: "date", iso: late } },
    notKnown,
  ]);
}

function shiftYears(iso: string, by: number): string {
  return `${Number(iso.slice(0, 4)) + by}${iso.slice(4)}`;
}
