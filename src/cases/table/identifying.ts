import type { Role } from "../types.js";
import type { Distinct } from "../values/column-facts.js";
import { looseDate, plainDate } from "../values/read-date.js";
import { staffNames } from "../values/staff.js";
import { mostly } from "./mostly.js";

const email = /^\S+@\S+\.\S+$/;
const phone = /^(\+|00|0|\()(?!\d?[./-]\d\d?[./-]\d)[\d ()/.-]{7,}$/;
const personName = /^\p{Lu}[\p{L}'’.-]+,?( \p{Lu}[\p{L}'’.-]*)+$/u;
const surname = /^\p{Lu}[\p{Ll}'’-]+$/u;

const surnameFirst = /^\p{Lu}\p{Ll}{3,}([ ,]+\p{L}{1,2}\.?\d*)?$/u;
const longNumber = /^\p{L}{0,2}[ -]?\d{6,10}$/u;

/** One to four letters before or after six or eight digits that can be a day of the calendar. */
function bornCode(text: string): boolean {
  const digits = /^(?:\p{L}{1,4}[ _-]?(\d{6}|\d{8})|(\d{6}|\d{8})[ _-]?\p{L}{1,4})$/u.exec(text);
  const date = digits?.[1] ?? digits?.[2];
  if (date === undefined) return false;
  const n = (from: number, to: number): number => Number(date.slice(from, to));
  const day = (d: number, m: number): boolean => d >= 1 && d <= 31 && m >= 1 && m <= 12;
  if (date.length === 6) return day(n(0, 2), n(2, 4)) || day(n(4, 6), n(2, 4)) || day(n(2, 4), n(0, 2));
  return day(n(0, 2), n(2, 4)) || day(n(6, 8), n(4, 6));
}

/** Study numbers follow each other, however many digits they have. */
function isSequence(values: readonly Distinct[], rows: number): boolean {
  let [low, high] = [Infinity, -Infinity];
  for (const { text } of values) {
    const number = Number(text.replace(/\D/g, ""));
    low = Math.min(low, number);
    high = Math.max(high, number);
  }
  return high - low < rows * 20;
}

const initials = /^\p{Lu}\.? ?\p{Lu}\.?( ?\p{Lu}\.?)?$/u;
const roman = /^[IVX]+$/;
const picture = /\.(jpe?g|png|dcm|tiff?|bmp|pdf|gif)$|^(img|dsc|dicom)[_ -]?\d{3,}/i;
const postCode = /^[A-Z]{1,2}\d[A-Z\d]? ?\d[A-Z]{2}$/i;
const address =
  /^\d{1,4}[a-z]?,? \p{L}.*\b(street|st|road|rd|avenue|ave|lane|close|drive|way|court|gardens|crescent)\b|\p{L}(straße|strasse|str\.|weg|gasse|platz) \d/iu;
const record = /^(\d{7,}|\d{3} \d{3} \d{4})$/;
const compactDate = /^(19|20)\d{6}$/;

/** Values that name or number a person, whatever the heading says. */
export function identifying(values: readonly Distinct[], rows: number, role: Role | undefined): boolean {
  if (values.length === 0) return false;
  const distinct = values.length >= Math.max(2, rows * 0.5);
  if (
    mostly(values, ({ text }) => [email, phone, picture, postCode, address].some((pattern) => pattern.test(text)), 0.6)
  )
    return true;
  if (role !== undefined && role !== "id" && role !== "child" && role !== "other") return false;
  if (distinct && mostly(values, ({ text }) => personName.test(text), 0.6)) return true;
  if (distinct && values.length > 2 && mostly(values, ({ text }) => initials.test(text) && !roman.test(text), 0.8))
    return true;
  const numbered = ({ text }: Distinct): boolean => record.test(text) && !compactDate.test(text);
  if (distinct && role !== "other" && mostly(values, numbered, 0.8)) return true;
  if (role !== "id" && role !== "child") return false;
  if (!distinct) return false;
  // "LB240907": letters and a birth date; "K6120334": far more digits than there are cases.
  if (mostly(values, ({ text }) => bornCode(text), 0.8) && !isSequence(values, rows)) return true;
  if (rows >= 5 && mostly(values, ({ text }) => longNumber.test(text), 0.8) && !isSequence(values, rows)) return true;
  return mostly(values, ({ text }) => surname.test(text) || surnameFirst.test(text), 0.6);
}

const staff =
  /\b(anaesth\w*|anesth\w*|assistants?|assisted by|referr\w*|seen by|examined by|reviewed by|entered by|typed by|filled in by|nurse|physiotherapist|physio|radiologist|clinician|doctor|gp|arzt|untersucher|anasthesist)\b/i;

/** A column of staff, or of raters, that holds names and not codes. */
export function namesStaff(name: string, role: Role | undefined, values: readonly Distinct[]): boolean {
  if (role !== "rater" && !staff.test(name)) return false;
  if (values.length === 0 || mostly(values, ({ text }) => /\d/.test(text) || /^[ivx]+[a-f]?$/i.test(text), 0.3))
    return false;
  if (role === "rater") return mostly(values, ({ text }) => personName.test(text) || titled.test(text));
  return mostly(values, (value) => staffNames([value]).length > 0 && /^\p{Lu}/u.test(value.text));
}

const titled = /^(dr|mr|mrs|ms|miss|prof)\b\.? /i;
const event =
  /\b(inj\w*|accident|trauma|doi|fall|unfall\w*|treat\w*|op|operat\w*|surg\w*|procedure|reduc\w*|dos|admi\w*|review\w*|follow\w*|last|f\/?u|seen|visit|clinic|removal|discharge\w*|first|x-?ray|film|consent)\b/i;

/** A column of dates under no event's name, years before all other dates and spread over years, holds birth dates. */
export function markBirths(names: readonly string[], columns: readonly (readonly Distinct[])[], roles: Role[]): void {
  const dated = roles.flatMap((role, c) => (role === "date" ? [{ c, years: yearsOf(columns[c]!) }] : []));
  for (const { c, years } of dated) {
    if (event.test(names[c]!) || years.length < 3) continue;
    const middle = years[Math.floor(years.length / 2)]!;
    const later = dated.some(
      (other) => other.c !== c && other.years[Math.floor(other.years.length / 2)]! - middle >= 4,
    );
    if (later && years.at(-1)! - years[0]! >= 2) roles[c] = "identifier";
  }
}

const convention = 2049;

function yearsOf(cells: readonly Distinct[]): number[] {
  const years = cells.slice(0, 300).flatMap(({ text, cell }) => {
    const iso = cell.date ?? plainDate(text, convention);
    return iso ? [Number(iso.slice(0, 4))] : (looseDate(text, convention)?.year ?? []);
  });
  return years.toSorted((a, b) => a - b);
}
