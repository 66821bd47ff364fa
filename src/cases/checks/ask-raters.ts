import type { Doubt, Draft } from "../doubts.js";
import { showValue } from "../show-value.js";
import { questionId } from "../values/read-column.js";

const fewest = 10;

/** Pairs of raters' columns that agree in every row: independent readings hardly ever do, copied ones always. */
export function askRaters(draft: Draft): Doubt[] {
  const raters = draft.roles.flatMap((role, k) => (role === "rater" ? [k] : []));
  const doubts: Doubt[] = [];
  raters.forEach((a, i) => {
    for (const b of raters.slice(i + 1)) {
      const n = identical(draft, a, b);
      if (n < fewest) continue;
      const text = `${draft.names[a]}, ${draft.names[b]}`;
      doubts.push({
        id: questionId("", "identical readings", text),
        column: draft.names[b]!,
        text,
        asks: `"${draft.names[a]}" and "${draft.names[b]}" are equal in all ${n} rows that have both: read independently, or copied?`,
        rows: [],
        blocks: [],
        choices: [{ label: "read independently" }, { label: "copied: leave the second out", sets: blanked(draft, b) }],
      });
    }
  });
  return doubts;
}

/** Number of rows with both readings when all are equal, else 0. */
function identical(draft: Draft, a: number, b: number): number {
  let n = 0;
  for (let line = 0; line < draft.lines.length; line++) {
    const [x, y] = [draft.values[a]![line]!, draft.values[b]![line]!];
    if (x.kind === "missing" || y.kind === "missing") continue;
    if (showValue(x) !== showValue(y)) return 0;
    n++;
  }
  return n;
}

function blanked(draft: Draft, column: number): Doubt["choices"][number]["sets"] & object {
  return draft.lines.map((_, line) => ({
    line,
    column,
    value: { kind: "missing" as const, reason: "notDone" as const },
  }));
}
