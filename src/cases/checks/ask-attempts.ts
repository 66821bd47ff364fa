import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";

const told = [
  /\b(failed|attempted|unsuccessful|tried|trial of|after)\s+(closed|manipulation|mua|cr\b|closed reduction)[^.;,]{0,20}/i,
  /\bclosed( reduction)?\s+(was\s+|attempt\s+)?(failed|unsuccessful|tried|not possible)[^.;,]{0,15}/i,
  /\b(converted|conversion|changed) (to|into) open\b/i,
  /\b(opened|went on to open|needed open(ing)?|had to (be )?open(ed)?)\b/i,
];

/** Notes that tell of a closed attempt where another technique stands: what was tried first decides the group of the case. */
export function askAttempts(draft: Draft): Doubt[] {
  const first = draft.roles.indexOf("firstTechnique");
  const technique = first >= 0 ? first : draft.roles.indexOf("finalTechnique");
  if (technique < 0 || (first >= 0 && draft.roles.includes("finalTechnique"))) return [];
  const notes = draft.roles.flatMap((role, k) =>
    role === "note" || role === "other" || role === "complication" ? [k] : [],
  );
  return draft.lines.flatMap(({ row, texts }, line): Doubt[] => {
    const typed = draft.values[technique]![line]!;
    if (typed.kind !== "text" || /^closed|^cr\b|^mua/.test(typed.text)) return [];
    const found = notes
      .map((k) => told.map((pattern) => pattern.exec(texts[draft.positions[k]!] ?? "")?.[0]).find(Boolean))
      .find(Boolean);
    if (!found) return [];
    const text = `${typed.text}, ${found.trim()}`;
    return [
      {
        id: `${questionId(draft.names[technique]!, "attempt", text)} @ ${draft.cases[line]!.id}`,
        column: draft.names[technique]!,
        text,
        asks: `"${typed.text}" is typed, but a note says "${found.trim()}": what was tried first?`,
        rows: [row.number],
        blocks: [{ line, column: technique }],
        choices: [
          {
            label: "first technique closed",
            sets: [{ line, column: technique, value: { kind: "text", text: "closed" } }],
          },
          { label: `first technique ${typed.text}`, sets: [{ line, column: technique, value: typed }] },
        ],
      },
    ];
  });
}
