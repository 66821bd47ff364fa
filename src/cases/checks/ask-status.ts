import type { Doubt, Draft } from "../doubts.js";
import { showValue } from "../show-value.js";
import type { MissingReason } from "../types.js";
import { questionId } from "../values/read-column.js";

const status = /\b(status|state|disposition|end of follow-? ?up|verbleib|statut|estado)\b/i;
const reasons: readonly (readonly [string, MissingReason])[] = [
  ["lost", "lost"],
  ["died", "died"],
  ["not yet followed up", "notDone"],
  ["not known", "unknown"],
];

/** A blank success whose row says something under a heading of status: why it is blank decides where the case leaves the flow. */
export function askStatus(draft: Draft): Doubt[] {
  const success = draft.roles.indexOf("success");
  const column = draft.names.findIndex((name, k) => draft.roles[k] === "other" && status.test(name));
  if (success < 0 || column < 0) return [];
  const groups = new Map<string, number[]>();
  draft.values[success]!.forEach((value, line) => {
    const said = draft.values[column]![line]!;
    const says = said.kind === "text" || (said.kind === "missing" && ["lost", "died"].includes(said.reason));
    if (value.kind !== "missing" || value.reason !== "blank" || !says) return;
    const text = showValue(said);
    const lines = groups.get(text);
    if (lines) lines.push(line);
    else groups.set(text, [line]);
  });
  return [...groups].map(([text, lines]): Doubt => {
    const places = lines.map((line) => ({ line, column: success }));
    return {
      id: questionId(draft.names[success]!, "blank with a status", text),
      column: draft.names[success]!,
      text,
      asks: `"${draft.names[success]}" is blank where "${draft.names[column]}" says "${text}": why is it not known?`,
      rows: lines.map((line) => draft.lines[line]!.row.number),
      blocks: places,
      choices: reasons.map(([label, reason]) => ({
        label,
        sets: places.map((place) => ({ ...place, value: { kind: "missing", reason } })),
      })),
    };
  });
}
