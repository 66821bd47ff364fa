import type { Role } from "../types.js";
import { cellLook } from "./cell-look.js";
import { identifying, namesStaff } from "./identifying.js";
import { isDate, mostly } from "./mostly.js";
import { codesOf, keyFor, type CodeKey } from "./find-keys.js";
import { nameRoles, plainHeading } from "./heading-words.js";
import { readYesNo } from "../values/read-yes-no.js";
import { readMissing } from "../values/read-missing.js";
import type { Distinct } from "../values/column-facts.js";
import { plainFacts } from "../values/reading.js";

/** Different values that are looked at to guess a role. */
const sampled = 2000;

function countOf(cells: readonly Distinct[]): number {
  return cells.length < sampled ? 0 : cells.reduce((sum, { count }) => sum + count, 0);
}

/** Roles that one column of a table has at most. */
const single: readonly Role[] = ["id", "child", "side", "sex", "firstTechnique", "finalTechnique"];

/** Guesses what each column holds from the words of its heading, checked against its values. Index is the column's. */
export function guessRoles(
  names: readonly string[],
  all: readonly (readonly Distinct[])[],
  allRows: number,
  keys: readonly CodeKey[] = [],
): Role[] {
  const columns = all.map((cells) => (cells.length > sampled ? cells.slice(0, sampled) : cells));
  const rows = Math.min(allRows, Math.max(sampled, ...columns.map(countOf)));
  const roles = names.map((name, c) => checked(nameRoles(name), name, columns[c]!, rows, keys));
  markRaters(names, columns, roles);
  if (!roles.includes("id")) promoteId(names, columns, roles, rows);
  const graded = roles.some((role, c) => role === "grade" && !typed.test(plainHeading(names[c]!)));
  if (graded)
    names.forEach((name, c) => {
      if (roles[c] === "grade" && typed.test(plainHeading(name))) roles[c] = "other";
    });
  markTechnique(columns, roles);
  for (const role of single)
    roles.forEach((each, c) => {
      if (each === role && roles.indexOf(role) !== c) roles[c] = "other";
    });
  return roles;
}

/** The likeliest role whose kind of values the column holds. */
function checked(
  candidates: readonly Role[],
  name: string,
  cells: readonly Distinct[],
  rows: number,
  keys: readonly CodeKey[],
): Role {
  const values = cells.filter(({ text }) => text !== "" && !readMissing(text));
  if (candidates[0] === "identifier" || identifying(values, rows, candidates[0])) return "identifier";
  if (namesStaff(name, candidates[0], values)) return "identifier";
  const meant = decoded(name, values, keys);
  const role = candidates.find(
    (each) =>
      each !== "identifier" && each !== "other" && (fits(each, name, values) || (meant && fits(each, name, meant))),
  );
  return role ?? byValues(values, rows, candidates.length > 0);
}

/** The values as the sheet's own key explains them, where it has one for the column. */
function decoded(name: string, values: readonly Distinct[], keys: readonly CodeKey[]): Distinct[] | undefined {
  const key = keyFor(name, codesOf(values), keys);
  return key && values.map((value) => ({ ...value, text: key.meanings.get(value.text.toLowerCase()) ?? value.text }));
}

function fits(role: Role, name: string, values: readonly Distinct[]): boolean {
  if (role === "success")
    return (
      mostly(values, yesOrNo) ||
      fewWords(values) ||
      (named.test(name) && worded(values)) ||
      (outcome.test(name) && fewCodes(values))
    );
  // "Limb" may head study numbers or sides.
  if (role === "id")
    return values.length === 0 || values.length > 3 || !mostly(values, ({ text }) => sideLike.test(text), 0.8);
  if (role === "sex") return mostly(values, ({ text }) => text.length <= 8);
  if (role === "side")
    return mostly(values, ({ text }) => sideLike.test(text)) || (values.length <= 3 && fewCodes(values));
  if (role === "date") return mostly(values, (value) => isDate(value) || /^\d{5}$/.test(value.text), 0.3);
  if (role === "grade")
    return (
      !typed.test(plainHeading(name)) || mostly(values, ({ text }) => /^((i{1,3}|iv|v)[a-d]?|\d[a-d]?)$/i.test(text))
    );
  if (role === "followUp") return !mostly(values, isDate) && mostly(values, ({ text }) => /\d/.test(text));
  if (role === "measurement") return mostly(values, ({ text }) => /\d/.test(text), 0.3);
  if (role === "firstTechnique" || role === "finalTechnique")
    return (mostly(values, ({ text }) => /\p{L}{2}/u.test(text)) || fewCodes(values)) && !mostly(values, isDate);
  if (role === "operator") return !mostly(values, isDate) && !mostly(values, ({ text }) => text.length > 40, 0.3);
  if (role === "complication") return !mostly(values, isDate);
  return true;
}

/** "Type" alone says little: its values must look like grades, and a column named for its grade comes before it. */
const typed = /^(?!.*\b(grade|grading|gr|severity|class|classification|stage)\b).*\btype$/;

/** A heading that leaves no doubt: its cells are asked about rather than passed over. */
const named = /\b(success\w*|succeeded|failed|failure|erfolg)\b/i;

const outcome = /\b(success\w*|outcome|result|erfolg|ergebnis)\b/i;

function worded(values: readonly Distinct[]): boolean {
  return (
    mostly(values, ({ text }) => /\p{L}/u.test(text)) && !mostly(values, ({ text }) => text.split(" ").length > 5, 0.3)
  );
}

/** A short list of words, as outcomes have ("good", "fair", "partial"). */
function fewWords(values: readonly Distinct[]): boolean {
  return values.length <= 8 && mostly(values, ({ text }) => /^\p{L}[\p{L}*/() ]{0,20}$/u.test(text), 0.8);
}

/** A handful of one-sign codes: what they mean is asked. */
function fewCodes(values: readonly Distinct[]): boolean {
  return values.length > 1 && values.length <= 6 && values.every(({ text }) => /^[\p{L}\d]$/u.test(text));
}

const sideLike =
  /^(l|r|b|left|right|lt|rt|li|re|links|rechts|both|bilat\w*|g|d|\?|izq\w*|der\w*|dch\w*|sin\w*|destr\w*)([./ &+].*)?$/i;
const yesOrNo = ({ text, cell }: Distinct): boolean => {
  const { asks } = readYesNo(text, plainFacts, cell);
  return !asks || /^[01x✓✔✗✘+?-]$/i.test(text);
};

function byValues(values: readonly Distinct[], rows: number, headed: boolean): Role {
  if (values.length === 0) return "other";
  if (mostly(values, isDate, 0.6)) return "date";
  if (mostly(values, ({ text }) => /^[<>~]?\d{1,3}([.,]\d+)?\s*(°|deg|%|mm)$|^\d\/\d$/i.test(text), 0.5))
    return "measurement";
  if (mostly(values, ({ text }) => /^\d{1,2}\s*y(rs?|ears?)?[ ,]*\d{1,2}\s*m|^\d{1,2} ?\+ ?\d{1,2}$/i.test(text), 0.6))
    return "age";
  if (headed) return "other";
  const few = values.length <= 6;
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(l|r|left|right)$/i.test(text), 0.9)) return "side";
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(m|f|male|female|boy|girl)$/i.test(text), 0.9))
    return "sex";
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(i{1,3}|iv|v)$/i.test(text), 0.8)) return "grade";
  if (values.length > rows * 0.5 && mostly(values, ({ text }) => text.split(" ").length > 4, 0.5)) return "note";
  return "other";
}

const technique = /^(closed|open|assisted|mua|orif|crif|crpp|manipulat\w*|k-?wir\w*|percutaneous|plate|sling|cast)\b/i;

/** Without a heading that says so: the one column that holds techniques. */
function markTechnique(columns: readonly (readonly Distinct[])[], roles: Role[]): void {
  if (roles.includes("firstTechnique") || roles.includes("finalTechnique")) return;
  const found = columns.flatMap((cells, c) => {
    const values = cells.filter(({ text }) => text !== "" && !readMissing(text));
    const held = roles[c] === "other" && values.length > 1 && mostly(values, ({ text }) => technique.test(text), 0.8);
    return held ? [c] : [];
  });
  if (found.length === 1) roles[found[0]!] = "firstTechnique";
}

const reading = /^(?:(.*)[ :_-])?([A-Z]|[A-Z]{2,3}|R(?:ater)?)[ _]?([1-9])?$/;

/** "A1, B1, A2, B2", also after a common word: letters for raters, numbers for their readings. */
function markRaters(names: readonly string[], columns: readonly (readonly Distinct[])[], roles: Role[]): void {
  const stems = new Map<string, number[]>();
  names.forEach((name, c) => {
    const match = reading.exec(name);
    if (!match?.[3] || !["other", "measurement", "grade", "rater"].includes(roles[c]!)) return;
    const stem = (match[1] ?? "").toLowerCase();
    stems.set(stem, [...(stems.get(stem) ?? []), c]);
  });
  for (const at of stems.values()) {
    const read = at.filter((c) =>
      mostly(
        columns[c]!.filter(({ text }) => text !== ""),
        ({ text }) => ["number", "code"].includes(cellLook(text)),
        0.8,
      ),
    );
    if (read.length >= 2) for (const c of read) roles[c] = "rater";
  }
}

/** Without a study number: the child's number, else the first column of distinct codes. */
function promoteId(
  names: readonly string[],
  columns: readonly (readonly Distinct[])[],
  roles: Role[],
  rows: number,
): void {
  const child = roles.indexOf("child");
  if (child >= 0) {
    roles[child] = "id";
    return;
  }
  if (roles.includes("identifier")) return;
  const first = names.findIndex((name) => name !== "");
  const cells = columns[first] ?? [];
  const codes =
    cells.length >= rows * 0.8 &&
    rows > 1 &&
    mostly(cells, ({ text }) => /\d/.test(text) && text.length <= 15 && !/[.,°%]/.test(text), 0.8);
  if (first >= 0 && roles[first] === "other" && codes) roles[first] = "id";
}
