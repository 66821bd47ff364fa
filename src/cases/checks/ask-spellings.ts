import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";

const usual = ["closed", "open", "assisted"];

/** Techniques spelled almost like a commoner one: a slip of the keys would make a group of its own. */
export function askSpellings(draft: Draft): Doubt[] {
  return draft.roles.flatMap((role, column): Doubt[] => {
    if (role !== "firstTechnique" && role !== "finalTechnique") return [];
    const counts = new Map<string, number[]>();
    draft.values[column]!.forEach((value, line) => {
      if (value.kind !== "text") return;
      const lines = counts.get(value.text);
      if (lines) lines.push(line);
      else counts.set(value.text, [line]);
    });
    if (counts.size > 40) return [];
    return [...counts].flatMap(([text, lines]): Doubt[] => {
      const meant = [...usual, ...counts.keys()].find(
        (other) =>
          other !== text &&
          !usual.includes(text) &&
          other.length > 3 &&
          near(text, other) &&
          (usual.includes(other) || counts.get(other)!.length > lines.length * 2),
      );
      if (meant === undefined) return [];
      const set = (value: string): Doubt["choices"][number]["sets"] & object =>
        lines.map((line) => ({ line, column, value: { kind: "text", text: value } }));
      return [
        {
          id: questionId(draft.names[column]!, "spelling", text),
          column: draft.names[column]!,
          text,
          asks: `"${text}" is spelled almost like "${meant}": the same?`,
          rows: lines.map((line) => draft.lines[line]!.row.number),
          blocks: lines.map((line) => ({ line, column })),
          choices: [
            { label: `the same as ${meant}`, sets: set(meant) },
            { label: "a technique of its own", sets: set(text) },
          ],
        },
      ];
    });
  });
}

/** One letter wrong, missing or too many, or two neighbours exchanged. */
function near(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  const [restA, restB] = [a.slice(start), b.slice(start)];
  if (restA.slice(1) === restB.slice(1) || restA.slice(1) === restB || restA === restB.slice(1)) return true;
  return restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
}
