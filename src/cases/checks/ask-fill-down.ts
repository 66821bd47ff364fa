import type { Doubt, Draft } from "../doubts.js";
import type { Value } from "../types.js";
import { questionId } from "../values/read-column.js";

const typedOnce: ReadonlySet<string> = new Set(["grade", "firstTechnique", "finalTechnique"]);

/** A grade or technique typed only in the first row of each block, with blanks below: whether it holds for them is asked. */
export function askFillDown(draft: Draft): Doubt[] {
  return draft.roles.flatMap((role, column): Doubt[] => {
    if (!typedOnce.has(role)) return [];
    const values = draft.values[column]!;
    const blanks = values.flatMap((value, line) => (isBlank(value) ? [line] : []));
    if (blanks.length < values.length * 0.4 || values.length < 4 || isBlank(values[0]!) || !inBlocks(values)) return [];
    const above: Value[] = [];
    values.forEach((value, line) => {
      above[line] = isBlank(value) ? above[line - 1]! : value;
    });
    const places = blanks.map((line) => ({ line, column }));
    return [
      {
        id: questionId(draft.names[column]!, "blanks below", ""),
        column: draft.names[column]!,
        text: "",
        asks: `${blanks.length} rows are blank below a first of their block: the same as above, or not recorded?`,
        rows: blanks.map((line) => draft.lines[line]!.row.number),
        blocks: places,
        choices: [
          { label: "the same as above", sets: places.map((place) => ({ ...place, value: above[place.line]! })) },
          {
            label: "not recorded",
            sets: places.map((place) => ({
              ...place,
              value: { kind: "missing" as const, reason: "unknown" as const },
            })),
          },
        ],
      },
    ];
  });
}

function isBlank(value: Value): boolean {
  return value.kind === "missing" && value.reason === "blank";
}

/** Typed values that follow each other differ, as the first rows of blocks do. */
function inBlocks(values: readonly Value[]): boolean {
  const typed = values.filter((value) => !isBlank(value)).map((value) => JSON.stringify(value));
  const changes = typed.slice(1).filter((value, i) => value !== typed[i]).length;
  return typed.length > 1 && changes >= (typed.length - 1) * 0.8;
}
