import type { Doubt, Draft } from "../doubts.js";
import { belongingOf } from "../table/yes-no-heading.js";
import type { Value } from "../types.js";
import { questionId } from "../values/read-column.js";

/** Lost by a column of its own, yet with a success or failure typed: the outcome may have been seen before. */
export function askLoss(draft: Draft): Doubt[] {
  const success = draft.roles.indexOf("success");
  if (success < 0) return [];
  return draft.roles.flatMap((role, column): Doubt[] => {
    const name = draft.names[column]!;
    if (role !== "other" || belongingOf(name) !== "loss") return [];
    const both = draft.values[column]!.flatMap((value, line) =>
      value.kind === "yesNo" && value.yes && draft.values[success]![line]!.kind === "yesNo" ? [line] : [],
    );
    if (both.length === 0) return [];
    const set = (value: Value): Doubt["choices"][number]["sets"] & object =>
      both.map((line) => ({ line, column, value }));
    return [
      {
        id: questionId(name, "lost with an outcome", ""),
        column: name,
        text: "",
        asks: `${both.length} rows are lost under "${name}", yet "${draft.names[success]}" is typed: does the typed outcome count?`,
        rows: both.map((line) => draft.lines[line]!.row.number),
        blocks: both.map((line) => ({ line, column })),
        choices: [
          { label: "lost: the outcome is not known", sets: set({ kind: "yesNo", yes: true }) },
          { label: "the outcome was seen before: count it", sets: set({ kind: "yesNo", yes: false }) },
        ],
      },
    ];
  });
}
