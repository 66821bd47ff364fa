import type { Doubt, Draft } from "../doubts.js";
import { belongingOf } from "../table/yes-no-heading.js";
import { questionId } from "../values/read-column.js";

/** A no under a heading of inclusion takes its case out of every rate: whether it is meant so is asked. */
export function askInclusion(draft: Draft): Doubt[] {
  return draft.roles.flatMap((role, column): Doubt[] => {
    if (role !== "other" || belongingOf(draft.names[column]!) !== "inclusion") return [];
    const out = draft.values[column]!.flatMap((value, line) => (value.kind === "yesNo" && !value.yes ? [line] : []));
    const name = draft.names[column]!;
    if (out.length === 0) return [];
    return [
      {
        id: questionId(name, "not included", ""),
        column: name,
        text: "",
        asks: `${out.length} rows say no under "${name}": are they excluded from the study?`,
        rows: out.map((line) => draft.lines[line]!.row.number),
        blocks: [],
        choices: [
          { label: "excluded" },
          {
            label: "counted all the same",
            sets: out.map((line) => ({ line, column, value: { kind: "yesNo" as const, yes: true } })),
          },
        ],
      },
    ];
  });
}
