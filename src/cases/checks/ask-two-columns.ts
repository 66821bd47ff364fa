import type { Doubt, Draft } from "../doubts.js";
import { showValue } from "../show-value.js";
import { kindOfSuccess } from "../success-kind.js";
import type { Answers, Role, Value } from "../types.js";
import { negativeHeading } from "../values/read-yes-no.js";

/** Columns of which a plan can take only one: several grades, or several successes of one kind. */
function rivals(
  names: readonly string[],
  roles: readonly Role[],
): { readonly id: string; readonly at: readonly number[] }[] {
  const groups = new Map<string, number[]>();
  roles.forEach((role, k) => {
    if (role !== "grade" && role !== "success") return;
    const key = role === "grade" ? role : kindOfSuccess(names[k]!);
    groups.set(key, [...(groups.get(key) ?? []), k]);
  });
  return [...groups.values()]
    .filter(({ length }) => length > 1)
    .map((at) => ({ id: `which column | ${at.map((k) => names[k]).join(", ")}`, at }));
}

/** Roles after an answer named the column that counts: its rivals are kept, but no longer read as the same thing. */
export function settleRivals(names: readonly string[], roles: readonly Role[], answers: Answers): Role[] {
  const out = [...roles];
  for (const { id, at } of rivals(names, roles)) {
    const chosen = Object.hasOwn(answers, id) ? at.find((k) => names[k] === answers[id]) : undefined;
    if (chosen !== undefined) for (const k of at) if (k !== chosen) out[k] = "other";
  }
  return out;
}

const late = /\b(final|last|latest|review|union|definitive|agreed|consensus|consultant)\b/i;

/** Two columns that tell the grade, or the success, and differ: which one counts is asked; where they differ nothing is. */
export function askTwoColumns(draft: Draft): Doubt[] {
  return rivals(draft.names, draft.roles).flatMap(({ id, at }): Doubt[] => {
    const differing = draft.lines.flatMap((_, line) => {
      const said = at.flatMap((k) => meaning(draft.values[k]![line]!, draft.names[k]!) ?? []);
      return new Set(said).size > 1 ? [line] : [];
    });
    if (differing.length === 0) return [];
    const names = at.map((k) => draft.names[k]!);
    const ordered = [...names.filter((name) => late.test(name)), ...names.filter((name) => !late.test(name))];
    return [
      {
        id,
        column: names[0]!,
        text: names.join(", "),
        asks: `${names.map((name) => `"${name}"`).join(" and ")} differ in ${differing.length} rows: which column counts?`,
        rows: differing.map((line) => draft.lines[line]!.row.number),
        blocks: differing.map((line) => ({ line, column: at[0]! })),
        choices: ordered.map((label) => ({ label })),
      },
    ];
  });
}

/** What a cell says, success as such under either kind of heading; undefined when it says nothing. */
function meaning(value: Value, name: string): string | undefined {
  if (value.kind === "yesNo") return String(value.yes !== negativeHeading(name));
  return value.kind === "grade" ? showValue({ kind: "grade", grade: value.grade }) : undefined;
}
