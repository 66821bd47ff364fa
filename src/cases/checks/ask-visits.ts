import type { Doubt, Draft } from "../doubts.js";
import { showValue } from "../show-value.js";
import type { Value } from "../types.js";
import { questionId } from "../values/read-column.js";
import { findVisits } from "../visits.js";

/** Rows whose "last" value is not that of the latest visit with a value: a best value, or a later visit of its own. */
export function askVisits(draft: Draft): Doubt[] {
  return findVisits(draft.names).flatMap(({ visits }) => {
    const last = visits.at(-1)!;
    if (last.months !== "last") return [];
    const at = draft.names.indexOf(last.column);
    const before = visits.slice(0, -1).map(({ column }) => draft.names.indexOf(column));
    return draft.lines.flatMap(({ row }, line): Doubt[] => {
      const typed = draft.values[at]![line]!;
      const latest = before.findLast((k) => draft.values[k]![line]!.kind === "number");
      if (typed.kind !== "number" || latest === undefined) return [];
      const value = draft.values[latest]![line] as Extract<Value, { kind: "number" }>;
      if (value.number === typed.number) return [];
      const text = `${showValue(typed)}, ${showValue(value)}`;
      return [
        {
          id: `${questionId(last.column, "last against latest", text)} @ ${draft.cases[line]!.id}`,
          column: last.column,
          text,
          asks: `"${last.column}" is ${showValue(typed)}, the latest visit ("${draft.names[latest]}") ${showValue(value)}: which was last?`,
          rows: [row.number],
          blocks: [],
          choices: [
            { label: "as typed, a later visit" },
            { label: `the latest visit, ${showValue(value)}`, sets: [{ line, column: at, value }] },
          ],
        },
      ];
    });
  });
}
