import type { Doubt, Draft } from "../doubts.js";
import type { Value } from "../types.js";
import { questionId } from "../values/read-column.js";

/** Upper ends of grades II and III when grades are cut at thirds of the width; grade I is not told from II by a share. */
const thirds = [1 / 3, 2 / 3] as const;
const later = /\b(after|residual|post|union|final|last|review|follow)/i;

/**
 * Typed grades that the measurement contradicts, when both stand in one row and grades are cut at thirds. Silent when more
 * than three in ten disagree: then the sheet's grades follow another rule.
 */
export function askGrades(draft: Draft): Doubt[] {
  const grade = draft.roles.indexOf("grade");
  const measured = draft.roles.findIndex(
    (role, k) => role === "measurement" && !draft.facts[k]!.motion && !later.test(draft.names[k]!),
  );
  if (grade < 0 || measured < 0) return [];
  let compared = 0;
  const doubts: Doubt[] = [];
  draft.lines.forEach(({ row }, line) => {
    const [typed, value] = [draft.values[grade]![line]!, draft.values[measured]![line]!];
    const share = shareOf(value);
    if (typed.kind !== "grade" || !/^I{1,3}$|^IV$/.test(typed.grade) || share === undefined) return;
    compared++;
    const computed = share <= thirds[0] + 1e-9 ? "II" : share <= thirds[1] + 1e-9 ? "III" : "IV";
    if (computed === typed.grade || (computed === "II" && typed.grade === "I")) return;
    doubts.push(mismatch(draft, { line, row: row.number, grade, measured }, typed.grade, computed));
  });
  return doubts.length <= Math.max(1, compared * 0.3) ? doubts : [];
}

function shareOf(value: Value): number | undefined {
  if (value.kind !== "number" || value.bound) return undefined;
  if (value.unit === "percent") return value.number / 100;
  if (value.unit === "share") return value.number;
  return value.unit === undefined && value.number >= 0 && value.number <= 1 ? value.number : undefined;
}

function mismatch(
  draft: Draft,
  at: { line: number; row: number; grade: number; measured: number },
  typed: string,
  computed: string,
): Doubt {
  const raw = draft.lines[at.line]!.texts[draft.positions[at.measured]!] ?? "";
  const text = `${typed}, ${raw}`;
  return {
    id: questionId(draft.names[at.grade]!, "grade against measurement", text),
    column: draft.names[at.grade]!,
    text,
    asks: `grade ${typed} is typed, but ${raw} is grade ${computed} when grades are cut at thirds: which is right?`,
    rows: [at.row],
    blocks: [{ line: at.line, column: at.grade }],
    choices: [
      {
        label: `keep the typed grade ${typed}`,
        sets: [{ line: at.line, column: at.grade, value: draft.values[at.grade]![at.line]! }],
      },
      {
        label: `use grade ${computed}`,
        sets: [{ line: at.line, column: at.grade, value: { kind: "grade", grade: computed } }],
      },
    ],
  };
}
