import type { Role } from "../types.js";
import type { Line } from "./find-table.js";
import { plainHeading } from "./heading-words.js";
import { looksLikeInitials } from "./looks-like.js";

const surname = /\b(sur ?name|last ?name|family ?name|nachname|familienname|apellidos?|nom|cognome)\b/;
const forename = /\b(fore ?name|first ?name|given ?name|vorname|rufname|prenom|nombres?)\b/;
const birth = /\b(dob|d o b|birth\w*|born|geb\w*|naissance|nacimiento|nascita)\b/;
/** What brothers and sisters, or all patients of one doctor, have in common. */
const shared =
  /\b(phone|tel\w*|mobile|address|street|post ?code|zip|plz|city|town|village|lives|residence|school|schule|mother|father|mum|dad|parents?|guardian|contact|gp|doctor|seen|referr\w*|e ?mail|image|film|photo)\b/;

/**
 * Positions of the withheld columns that together tell one child from another where the sheet has no number that can be
 * shown: a record number, else surname with forename, else the column with most different cells; a surname alone and
 * initials are told apart by the birth date.
 */
export function personColumns(sheet: {
  readonly names: readonly string[];
  readonly roles: readonly Role[];
  readonly positions: readonly number[];
  readonly lines: readonly Line[];
}): number[] {
  const columns = sheet.roles.flatMap((role, k) => {
    if (role !== "identifier") return [];
    const at = sheet.positions[k]!;
    const texts = new Set(sheet.lines.map(({ texts: line }) => (line[at] ?? "").toLowerCase()));
    return [{ at, heading: plainHeading(sheet.names[k]!), texts }];
  });
  const own = columns.filter(({ heading }) => !shared.test(heading) && !birth.test(heading));
  const most = (from: typeof columns): typeof columns =>
    from.toSorted((a, b) => b.texts.size - a.texts.size).slice(0, 1);
  const numbers = own.filter(
    ({ texts }) =>
      texts.size * 2 >= sheet.lines.length && [...texts].every((text) => text === "" || /\d{4}/.test(text)),
  );
  if (numbers.length > 0) return [most(numbers)[0]!.at];
  const [last, first] = [surname, forename].map((words) => own.find(({ heading }) => words.test(heading)));
  if (last && first && last !== first) return [last.at, first.at];
  const chosen = most(own.length > 0 ? own : columns);
  const born = columns.find(({ heading }) => birth.test(heading));
  const short = chosen.some(
    ({ texts, heading }) =>
      surname.test(heading) || [...texts].every((text) => text === "" || looksLikeInitials(text.toUpperCase())),
  );
  return [...chosen, ...(short && born && !chosen.includes(born) ? [born] : [])].map(({ at }) => at);
}
