import type { Role } from "../types.js";
import { cellLook } from "./cell-look.js";
import { headingRole, plainHeading } from "./heading-words.js";
import { readYesNo } from "../values/read-yes-no.js";
import { readMissing } from "../values/read-missing.js";
import type { Distinct } from "../values/column-facts.js";
import type { ColumnFacts } from "../values/reading.js";

/** Roles that one column of a table has at most. */
const single: readonly Role[] = ["id", "child", "side", "sex", "firstTechnique", "finalTechnique"];

/** Guesses what each column holds from the words of its heading, checked against its values. Index is the column's. */
export function guessRoles(names: readonly string[], columns: readonly (readonly Distinct[])[], rows: number): Role[] {
  const roles = names.map((name, c) => checked(byHeading(name), name, columns[c]!, rows));
  markRaters(names, columns, roles);
  if (!roles.includes("id")) promoteId(names, columns, roles, rows);
  for (const role of single)
    roles.forEach((each, c) => {
      if (each === role && roles.indexOf(role) !== c) roles[c] = "other";
    });
  return roles;
}

/** The last part of a two-row name decides; the group only where the last part says nothing. */
function byHeading(name: string): Role | undefined {
  const last = name.split(": ").at(-1)!;
  return headingRole(last) ?? headingRole(name);
}

function checked(role: Role | undefined, name: string, cells: readonly Distinct[], rows: number): Role {
  const values = cells.filter(({ text }) => text !== "" && !readMissing(text));
  if (role === "identifier") return "identifier";
  if (identifying(values, rows, role)) return "identifier";
  if (role === "success" && !mostly(values, yesOrNo)) return "other";
  if (role === "sex" && !mostly(values, ({ text }) => text.length <= 8)) return "other";
  if (
    role === "side" &&
    !mostly(values, ({ text }) =>
      /^(l|r|b|left|right|lt|rt|li|re|links|rechts|both|bilat\w*|g|d|\?|izq|der|dcha)[./ ]?/i.test(text),
    )
  )
    return "other";
  if ((role === undefined || role === "other") && values.length > 0) return byValues(values, rows, role);
  if (
    role === "grade" &&
    plainHeading(name) === "type" &&
    !mostly(values, ({ text }) => /^(i{1,3}|iv|v|\d[a-d]?)$/i.test(text))
  )
    return "other";
  if (role === "followUp" && mostly(values, isDate)) return "date";
  return role ?? "other";
}

const plainFacts: ColumnFacts = {
  name: "",
  decimalComma: undefined,
  dateOrder: "unproved",
  unit: undefined,
  latestYear: 2049,
  values: "text",
  usual: undefined,
  span: undefined,
  kind: "text",
};
const yesOrNo = ({ text, cell }: Distinct): boolean => {
  const { asks } = readYesNo(text, plainFacts, cell);
  return !asks || /^[01x✓✔✗✘+?-]$/i.test(text);
};
const isDate = ({ text, cell }: Distinct): boolean => cell.date !== undefined || cellLook(text) === "date";

function mostly(values: readonly Distinct[], test: (value: Distinct) => boolean, share = 0.5): boolean {
  if (values.length === 0) return true;
  let all = 0;
  let fit = 0;
  for (const value of values) {
    all += value.count;
    if (test(value)) fit += value.count;
  }
  return fit >= all * share;
}

const email = /^\S+@\S+\.\S+$/;
const phone = /^(\+|00|0|\()[\d ()/.-]{7,}$/;
const personName = /^\p{Lu}[\p{L}'’.-]+,?( \p{Lu}[\p{L}'’.-]*)+$/u;
const surname = /^\p{Lu}[\p{Ll}'’-]+$/u;

/** Values that name or number a person, whatever the heading says. */
function identifying(values: readonly Distinct[], rows: number, role: Role | undefined): boolean {
  if (values.length === 0) return false;
  const distinct = values.length >= Math.max(2, rows * 0.5);
  if (mostly(values, ({ text }) => email.test(text) || phone.test(text), 0.6)) return true;
  if (role !== undefined && role !== "id" && role !== "child" && role !== "other") return false;
  if (distinct && mostly(values, ({ text }) => personName.test(text), 0.6)) return true;
  if (role === "id" || role === "child")
    return (
      distinct &&
      (mostly(values, ({ text }) => surname.test(text), 0.6) ||
        mostly(values, ({ text }) => /^\d{7,}$/.test(text), 0.8))
    );
  return false;
}

function byValues(values: readonly Distinct[], rows: number, role: Role | undefined): Role {
  if (mostly(values, isDate, 0.6)) return "date";
  if (role === "other") return "other";
  const few = values.length <= 6;
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(l|r|left|right)$/i.test(text), 0.9)) return "side";
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(m|f|male|female|boy|girl)$/i.test(text), 0.9))
    return "sex";
  if (few && values.length > 1 && mostly(values, ({ text }) => /^(i{1,3}|iv|v)$/i.test(text), 0.8)) return "grade";
  if (values.length > rows * 0.5 && mostly(values, ({ text }) => text.split(" ").length > 4, 0.5)) return "note";
  return "other";
}

/** "A1, B1, A2, B2": letters for raters, numbers for their readings; at least two such columns. */
function markRaters(names: readonly string[], columns: readonly (readonly Distinct[])[], roles: Role[]): void {
  const at = names.flatMap((name, c) =>
    /^(?:.*[: ])?(?:[A-Z]{1,3} ?[1-9]|R(ater)?[ _]?\d|[A-Z]{2,3})$/.test(name) && roles[c] === "other" ? [c] : [],
  );
  const readings = at.filter((c) =>
    mostly(
      columns[c]!.filter(({ text }) => text !== ""),
      ({ text }) => ["number", "code"].includes(cellLook(text)),
      0.8,
    ),
  );
  const pattern = readings.filter((c) => /[A-Z] ?[1-9]$/.test(names[c]!));
  if (pattern.length >= 2) for (const c of pattern) roles[c] = "rater";
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
