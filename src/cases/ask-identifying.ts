import type { SheetIssue } from "./sheet-error.js";
import { birthColumns, mayIdentify } from "./table/identifying.js";
import { nameRoles } from "./table/heading-words.js";
import type { Answers, Question, Role } from "./types.js";
import type { Distinct } from "./values/column-facts.js";
import { readMissing } from "./values/read-missing.js";

const keep = "yes: keep it withheld";
const show = "no: it may be shown";

/** A column that may identify people, and what it may hold. */
export interface Doubtful {
  readonly at: number;
  readonly births: boolean;
}

/** Columns whose headings do not tell, but whose values may name or number people, or be their birth dates. */
export function doubtfulColumns(
  names: readonly string[],
  cells: readonly (readonly Distinct[])[],
  { roles, rows }: { readonly roles: readonly Role[]; readonly rows: number },
): Doubtful[] {
  const births = birthColumns(names, cells, roles);
  return names.flatMap((name, at): Doubtful[] => {
    if (births.includes(at)) return [{ at, births: true }];
    if (roles[at] !== "other" && roles[at] !== "id" && roles[at] !== "child") return [];
    const some = cells[at]!.slice(0, searched);
    const seen = some.length < cells[at]!.length ? some.reduce((sum, { count }) => sum + count, 0) : rows;
    const values = some.filter(({ text }) => text !== "" && !readMissing(text));
    return mayIdentify(values, seen, nameRoles(name)) ? [{ at, births: false }] : [];
  });
}

const searched = 2000;

/** Withholds doubtful columns until an answer sets them free; nothing of their values is in the question. */
export function settleIdentifying(
  doubtful: readonly Doubtful[],
  given: { readonly names: readonly string[]; readonly roles: readonly Role[]; readonly answers: Answers },
): { readonly roles: Role[]; readonly questions: Question[]; readonly issues: SheetIssue[] } {
  const roles = [...given.roles];
  const questions: Question[] = [];
  const issues: SheetIssue[] = [];
  for (const { at, births } of doubtful) {
    const name = given.names[at]!;
    const id = `identifies | ${name}`;
    const answer = Object.hasOwn(given.answers, id) ? given.answers[id]! : undefined;
    if (answer !== show) roles[at] = "identifier";
    if (answer === undefined) {
      const asks = births
        ? `the dates under "${name}" may be birth dates and are withheld: are they?`
        : `"${name}" may name or number people and is withheld: does it?`;
      questions.push({ id, rows: [], column: name, text: "", asks, choices: [keep, show] });
    } else if (answer !== keep && answer !== show)
      issues.push({ value: answer, question: id, rule: `the answer to "${id}" must be one of "${keep}", "${show}"` });
  }
  return { roles, questions, issues };
}
