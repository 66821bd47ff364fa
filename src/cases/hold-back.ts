import { rightTableId } from "./ask-tables.js";
import { struckId } from "./table/apply-line-answers.js";
import type { Draft, Place } from "./doubts.js";
import type { Question, Value } from "./types.js";

/** Values with the outcome of some cases held back, and the places where that was done. */
export interface HeldBack {
  readonly values: readonly (readonly Value[])[];
  readonly open: readonly Place[];
}

/** Questions about lines of the file whose answer may take cases out or change them. */
export function touchingCases(questions: readonly Question[], lines: number): readonly Question[] {
  return questions.filter(({ id, rows }) => {
    if (id === "coloured cells") return rows.length * 2 <= lines;
    return id === "hidden rows" || id === struckId || id === rightTableId || id.startsWith("comment | ");
  });
}

/**
 * Holds back the outcome of cases that an open question may take out, or count once where they stand twice: until the
 * answer a rate is given by its bounds only.
 */
export function holdBack(
  draft: Draft,
  values: readonly (readonly Value[])[],
  questions: readonly Question[],
): HeldBack {
  const outcome = draft.roles.flatMap((role, k) => (role === "success" ? [k] : []));
  const doubted = new Map<number, string>();
  for (const { id, rows } of questions) for (const row of rows) if (!doubted.has(row)) doubted.set(row, id);
  if (doubted.size === 0 || outcome.length === 0) return { values, open: [] };
  const open: Place[] = [];
  const held = [...values];
  for (const column of outcome)
    held[column] = values[column]!.map((value, line): Value => {
      const question = doubted.get(draft.lines[line]!.row.number);
      if (question === undefined || value.kind !== "yesNo") return value;
      open.push({ line, column });
      return { kind: "asked", question };
    });
  return { values: held, open };
}
