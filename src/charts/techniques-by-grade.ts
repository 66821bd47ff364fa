import { techniques, type CaseMark, type MarkTechnique } from "./case-mark.js";
import type { RowText } from "./columns-of.js";
import type { Drawing } from "./drawing.js";
import { markRows } from "./mark-rows.js";

export interface TechniquesRow extends RowText {
  /** Cases of the row in each technique, none where a technique was not used. */
  readonly marks: Readonly<Partial<Record<MarkTechnique, readonly CaseMark[]>>>;
}

/** Who was treated how: each case in the shape of its technique, the techniques side by side, crossed where it says so. */
export function techniquesByGrade(
  rows: readonly TechniquesRow[],
  text: Readonly<Partial<Record<MarkTechnique, string>>>,
  options: { readonly width?: number } = {},
): Drawing {
  return markRows(
    rows.map(({ marks, ...rest }) => ({
      ...rest,
      groups: techniques.map((technique) => marks[technique] ?? []).filter((group) => group.length > 0),
      band: null,
    })),
    { ...options, inline: true, key: keyOf(text) },
  );
}

/** Techniques that a text is given for, in the order of the ladder. */
export function keyOf(text: Readonly<Partial<Record<MarkTechnique, string>>>) {
  return techniques.flatMap((technique) =>
    text[technique] === undefined ? [] : [{ technique, text: text[technique] }],
  );
}
