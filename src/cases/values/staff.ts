import type { Distinct } from "./column-facts.js";
import { readMissing } from "./read-missing.js";

const ranks =
  /^((senior|junior|staff|chief|locum|associate|assistant) )*(consultants?|cons|registrars?|reg|fellows?|trainees?|residents?|attendings?|specialists?|seniors?|juniors?|grade|sho|spr|st ?\d|ct ?\d|fy ?\d|pgy ?-?\d|surgeons?|operators?|locum|oberarzt|assistenzarzt|chefarzt|facharzt|oa|aa|interne|chef|various|several|other|team)$/i;
const code =
  /^((surgeon|operator|op|consultant|cons|registrar|reg|fellow|trainee|resident|chirurg|rater|dr|s|c|r|o|st|no\.?)[ ._-]?)?(\d{1,3}|\p{L})$/iu;
const titles = /^((dr|mr|mrs|ms|miss|prof|professor|doctor|herr|frau|mme|m|dott|dra|sr|sra)\b\.? *)+/i;

/** Stable codes for the people named in a column, by name in lower case without its title: "Surgeon A". */
export function staffCodes(
  cells: readonly Pick<Distinct, "text">[],
  before: readonly string[] = [],
): Map<string, string> {
  const known = new Map<string, string>();
  const add = (name: string): void => {
    if (name !== "" && !known.has(name)) known.set(name, `Surgeon ${letters(known.size)}`);
  };
  before.forEach(add);
  for (const { text } of cells) for (const person of people(text)) if (isName(person)) add(folded(person));
  return known;
}

/** A cell with codes in place of names; codes and ranks ("B", "Surgeon 2", "registrar") stay as they are. */
export function codedStaff(text: string, codes: ReadonlyMap<string, string>): string {
  return people(text)
    .map((person) => codes.get(folded(person)) ?? person)
    .join(" and ");
}

/** Names to be kept out of sight, without titles and ranks. */
export function staffNames(cells: readonly Pick<Distinct, "text">[]): string[] {
  return cells.flatMap(({ text }) => people(text).filter(isName).map(folded));
}

function people(text: string): string[] {
  return text
    .split(/\s*[/&+;]\s*|\s+(?:and|und|et|with)\s+/i)
    .map((person) => person.trim())
    .filter((person) => person !== "");
}

/** Not a code, a rank or a kind of missing. */
function isName(person: string): boolean {
  return !code.test(person) && !ranks.test(person) && !readMissing(person) && /\p{L}/u.test(person);
}

function folded(person: string): string {
  return (
    person
      .toLowerCase()
      .replace(titles, "")
      .replace(/[.\s]+$/, "")
      .trim() || person.toLowerCase()
  );
}

/** 0 is A, 25 is Z, 26 is AA. */
function letters(n: number): string {
  return (n >= 26 ? letters(Math.floor(n / 26) - 1) : "") + String.fromCharCode(65 + (n % 26));
}
