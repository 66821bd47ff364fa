import type { Role } from "../types.js";
import type { Distinct } from "../values/column-facts.js";
import { looseDate, plainDate } from "../values/read-date.js";
import { staffNames } from "../values/staff.js";
import { holdsBirthCode, initialsOf, isSequence, looksLikeInitials, looksLikeName } from "./looks-like.js";
import { nameRoles, plainHeading } from "./heading-words.js";
import { mostly } from "./mostly.js";

const email = /^\S+@\S+\.\S+$/;
const phone = /^((tel|ph|mob)\.?:? ?)?(\+|00|0|\()(?!\d?[./-]\d\d?[./-]\d)[\d ()/.-]{7,}$/i;
const personName = /^\p{Lu}[\p{L}'’.-]+,?( \p{Lu}[\p{L}'’.-]*)+$/u;
/** Far more digits than a study number needs, letters or a year in front allowed. */
const longNumber = /^\p{L}{0,3}[ /.-]?(\d{1,4}[/-])?\d{6,10}([/-]?[\p{L}\d])?$|^\d{3}[ -]\d{3,4}([ -]\d{2,4})?$/u;
const fiveDigits = /^\p{L}{0,3}[ /.-]?\d{5}$/u;
const picture = /\.(jpe?g|png|dcm|tiff?|bmp|pdf|gif)$|^(img|dsc|dicom)[_ -]?\d{3,}/i;
const postCode = /^[A-Z]{1,2}\d[A-Z\d]? ?\d[A-Z]{2}$/i;
const address =
  /^\d{1,4}[a-z]?,? \p{L}.*\b(street|st|road|rd|avenue|ave|lane|close|drive|way|court|gardens|crescent)\b|\p{L}(straße|strasse|str\.|weg|gasse|platz) \d/iu;
const grouped = /^\d{3}[ -]\d{3}[ -]\d{4}$/;
const record = /^\d{7,}$/;
const compactDate = /^(19|20)\d{2}(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])$/;

/** Roles that a column of names can be mistaken for; undefined where the heading says nothing. */
const personal: ReadonlySet<Role | undefined> = new Set([undefined, "id", "child", "other", "note"]);

/** Values that name or number a person, whatever the heading says. */
export function identifying(values: readonly Distinct[], rows: number, role: Role | undefined): boolean {
  if (values.length === 0) return false;
  const share = (test: (text: string) => boolean, least: number): boolean =>
    mostly(values, ({ text }) => test(text), least);
  if (share((text) => [email, phone, picture, postCode, address].some((pattern) => pattern.test(text)), 0.6))
    // "00000012" is a running number with zeros in front.
    return !(values.every(({ text }) => /^\d+$/.test(text)) && isSequence(values.map(({ text }) => text)));
  if (!personal.has(role)) return false;
  if (share((text) => titled.test(text), 0.6)) return true;
  if (values.length < Math.max(2, rows * 0.5)) return false;
  if (role !== "note" && numbering(values, rows, role)) return true;
  if (share((text) => personName.test(text) && looksLikeName(text), 0.6)) return true;
  if (values.length > 2 && role !== "note" && share(looksLikeInitials, 0.8)) return true;
  if (role === "other") return false;
  const codes = new Set(values.flatMap(({ text }) => initialsOf(text) ?? []));
  if (codes.size >= Math.max(3, rows * 0.4) && share((text) => initialsOf(text) !== undefined, 0.8)) return true;
  const small = role === "id" || role === "child";
  return (
    values.length >= Math.max(small ? 2 : 3, rows * (small ? 0.5 : 0.7)) &&
    share((text) => looksLikeName(text, small), 0.6)
  );
}

/** Numbers of a hospital, or letters with a birth date; study numbers follow each other, however long they are. */
function numbering(values: readonly Distinct[], rows: number, role: Role | undefined): boolean {
  // Days of the calendar are dates, unless they stand for the child: then they are birth dates.
  const dated = (text: string): boolean => role !== "id" && role !== "child" && compactDate.test(text);
  // Ten digits in three groups are no study number, whatever follows whatever.
  if (mostly(values, ({ text }) => grouped.test(text), 0.8)) return true;
  const long = ({ text }: Distinct): boolean => longNumber.test(text) && !dated(text);
  const sure = ({ text }: Distinct): boolean => record.test(text) && !dated(text);
  const kinds = [holdsCode, sure, ...(rows >= 5 ? [long] : [])];
  return kinds.some((kind) => mostly(values, kind, 0.8)) && !isSequence(values.map(({ text }) => text));
}

const holdsCode = ({ text }: Distinct): boolean => holdsBirthCode(text);

/**
 * Values that may name or number a person, under a heading that does not tell: a few words or abbreviations of which
 * nothing is known, words nearly all different under a heading of the trade, numbers of five digits out of sequence.
 */
export function mayIdentify(values: readonly Distinct[], rows: number, headings: readonly Role[]): boolean {
  if (values.length < 2) return false;
  const role = headings[0];
  const share = (test: (text: string) => boolean, least: number): boolean =>
    mostly(values, ({ text }) => test(text), least);
  const different = values.length >= Math.max(3, rows * 0.7);
  if (role === "other") return different && rows >= 8 && share((text) => looksLikeName(text), 0.6);
  if (role === "id" || role === "child" || role === undefined) {
    const sparse = rows >= 8 && different && share((text) => fiveDigits.test(text), 0.8);
    if (sparse && !isSequence(values.map(({ text }) => text))) return true;
  }
  if (role !== undefined) return false;
  if (share((text) => looksLikeName(text, different), 0.6)) return true;
  return values.length > 2 && share(looksLikeInitials, 0.8);
}

const staff =
  /\b(anaesth\w*|anesth\w*|assistants?|assisted by|referr\w*|seen by|examined by|reviewed by|entered by|typed by|filled in by|nurse|physiotherapist|physio|radiologist|clinician|doctor|gp|arzt|untersucher|anasthesist)\b/i;

/** A column of staff, or of raters, that holds names and not codes. */
export function namesStaff(name: string, role: Role | undefined, values: readonly Distinct[]): boolean {
  if (role !== "rater" && !staff.test(name)) return false;
  if (values.length === 0 || mostly(values, ({ text }) => /\d/.test(text) || /^[ivx]+[a-f]?$/i.test(text), 0.3))
    return false;
  if (role === "rater") return mostly(values, ({ text }) => personName.test(text) || titled.test(text));
  // "Anaesthesia" heads kinds of it as well as people.
  const unknown = values.filter(({ text }) => looksLikeName(text) || looksLikeInitials(text) || titled.test(text));
  if (unknown.length * 2 < values.length) return false;
  return mostly(values, (value) => staffNames([value]).length > 0 && /^\p{Lu}/u.test(value.text));
}

const titled = /^(dr|mr|mrs|ms|miss|prof)\b\.? /i;
const event =
  /\b(inj\w*|accident|trauma|doi|fall|unfall\w*|treat\w*|op|operat\w*|surg\w*|procedure|reduc\w*|dos|admi\w*|review\w*|follow\w*|last|f\/?u|seen|visit|clinic|removal|discharge\w*|first|x-?ray|film|consent)\b/i;

/**
 * Columns that hold birth dates by their dates: under no event's name, years before the other dates, or the only dates of
 * the sheet under a heading that says nothing.
 */
export function birthColumns(
  names: readonly string[],
  columns: readonly (readonly Distinct[])[],
  roles: readonly Role[],
): number[] {
  const dated = roles.flatMap((role, c) => (role === "date" ? [{ c, years: yearsOf(columns[c]!) }] : []));
  const middle = (years: readonly number[]): number => years[Math.floor(years.length / 2)] ?? Number.NaN;
  return dated.flatMap(({ c, years }) => {
    const heading = plainHeading(names[c]!);
    if (event.test(heading) || years.length < 3) return [];
    const after = dated.map((other) => middle(other.years) - middle(years));
    const later = after.some((gap) => gap >= 3 && gap <= 25) && years.at(-1)! - years[0]! >= 1;
    return later || (dated.length === 1 && nameRoles(names[c]!).length === 0) ? [c] : [];
  });
}

const convention = 2049;

function yearsOf(cells: readonly Distinct[]): number[] {
  const years = cells.slice(0, 300).flatMap(({ text, cell }) => {
    const iso = cell.date ?? plainDate(text, convention);
    return iso ? [Number(iso.slice(0, 4))] : (looseDate(text, convention)?.year ?? []);
  });
  return years.toSorted((a, b) => a - b);
}
