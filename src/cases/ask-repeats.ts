import { questionId } from "./values/read-column.js";
import type { CaseName } from "./table/identify-cases.js";
import type { Line } from "./table/find-table.js";
import type { Question, Value } from "./types.js";

export const keepBoth = "different limbs or injuries: keep both";
export const keepFirst = "the same case: keep the first";
export const keepLast = "the same case: keep the last";

export interface RepeatTask {
  readonly lines: readonly Line[];
  readonly names: readonly CaseName[];
  readonly sides: readonly Value[];
  /** Dates of injury or operation, where the sheet has them. */
  readonly dates: readonly Value[];
  readonly column: string;
}

/** Rows that name the same child and side, on the same date or without one, may be one case typed twice. */
export function askRepeats({
  lines,
  names,
  sides,
  dates,
  column,
}: RepeatTask): (Question & { readonly lines: readonly number[] })[] {
  const groups = new Map<string, number[]>();
  names.forEach(({ child, typed }, i) => {
    if (typed === "" && child.startsWith("child of ")) return;
    const side = sides[i];
    const key = `${child.toLowerCase()}\u0000${side?.kind === "text" ? side.text : ""}`;
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  });
  return [...groups.values()]
    .filter((group) => group.length > 1)
    .map((group) => {
      const first = group[0]!;
      const iso = group.map((i) => (dates[i]?.kind === "date" ? dates[i].iso : ""));
      const apart = new Set(iso).size > 1 && !iso.includes("");
      const side = sides[first]?.kind === "text" ? ` ${sides[first].text}` : "";
      const text = `${names[first]!.child}${side}`;
      const rows = group.map((i) => lines[i]!.row.number);
      const asks = apart
        ? `${text} stands in ${rows.length} rows with different dates: two injuries, or visits of one case?`
        : `${text} stands in ${rows.length} rows: the same case twice?`;
      return {
        id: questionId(column, "repeated", text),
        rows,
        column,
        text,
        asks,
        choices: [keepBoth, keepFirst, keepLast],
        lines: group,
      };
    });
}
