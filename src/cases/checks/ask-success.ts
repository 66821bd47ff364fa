import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";

/** Elevation below which a success is worth a second look; the plan's own rule decides in the analysis. */
const elevation = 150;
const raised = /\b(elev\w*|abduction|abd|forward flexion)\b/i;
const otherSide = /\b(other|opposite|normal|contralateral|healthy|uninjured|pre\w*|before)\b/i;

/**
 * A success typed by hand although the arm is raised less than 150 degrees. Silent when three in ten successes are so: then
 * the sheet's success means something else.
 */
export function askSuccess(draft: Draft): Doubt[] {
  const success = draft.roles.indexOf("success");
  const motion = draft.names.findLastIndex(
    (name, k) => raised.test(name) && !otherSide.test(name) && draft.facts[k]!.values === "number",
  );
  if (
    success < 0 ||
    motion < 0 ||
    draft.facts[success] === undefined ||
    /fail|lost|loss|displac/i.test(draft.names[success]!)
  )
    return [];
  let compared = 0;
  const doubts: Doubt[] = [];
  draft.lines.forEach(({ row }, line) => {
    const [typed, value] = [draft.values[success]![line]!, draft.values[motion]![line]!];
    if (typed.kind !== "yesNo" || !typed.yes || value.kind !== "number" || value.bound) return;
    compared++;
    if (value.number >= elevation || value.number < 2) return;
    const text = `yes, ${value.number}`;
    doubts.push({
      id: `${questionId(draft.names[success]!, "success against its rule", text)} @ ${draft.cases[line]!.id}`,
      column: draft.names[success]!,
      text,
      asks: `a success is typed although "${draft.names[motion]}" is ${value.number}, under ${elevation}: does it meet your rule?`,
      rows: [row.number],
      blocks: [{ line, column: success }],
      choices: [
        { label: "a success as typed", sets: [{ line, column: success, value: typed }] },
        { label: "no success", sets: [{ line, column: success, value: { kind: "yesNo", yes: false } }] },
      ],
    });
  });
  return doubts.length <= Math.max(1, compared * 0.3) ? doubts : [];
}
