import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";

const roman = ["0", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];
const fewest = 12;

/** A grade that only one or two rows have, beyond the run of the others ("0", "V" beside I to IV): a slip of the keys? */
export function askRareGrades(draft: Draft): Doubt[] {
  const column = draft.roles.indexOf("grade");
  if (column < 0) return [];
  const lines = new Map<string, number[]>();
  draft.values[column]!.forEach((value, line) => {
    if (value.kind !== "grade") return;
    const held = lines.get(value.grade);
    if (held) held.push(line);
    else lines.set(value.grade, [line]);
  });
  const all = [...lines.values()].flat().length;
  if (all < fewest || [...lines.keys()].some((grade) => !roman.includes(grade))) return [];
  const usual = [...lines]
    .filter(([, held]) => held.length > 1 && held.length > all * 0.05)
    .map(([grade]) => roman.indexOf(grade));
  if (usual.length < 3) return [];
  return [...lines].flatMap(([grade, held]): Doubt[] => {
    const rank = roman.indexOf(grade);
    // A rare highest grade up to IV is what grades are like.
    const beyond = rank === 0 ? Math.min(...usual) > 0 : rank > Math.max(...usual) && rank > 4;
    if (held.length > 2 || !beyond) return [];
    const places = held.map((line) => ({ line, column }));
    const set = (value: string): Doubt["choices"][number]["sets"] & object =>
      places.map((place) => ({ ...place, value: { kind: "grade", grade: value } }));
    return [
      {
        id: questionId(draft.names[column]!, "rare grade", grade),
        column: draft.names[column]!,
        text: grade,
        asks: `grade ${grade} stands in ${held.length === 1 ? "one row" : "two rows"} only, beyond the grades of the others: a slip, or a grade of its own?`,
        rows: held.map((line) => draft.lines[line]!.row.number),
        blocks: places,
        choices: [
          { label: "a grade of its own", sets: set(grade) },
          ...usual.toSorted((a, b) => a - b).map((k) => ({ label: `grade ${roman[k]}`, sets: set(roman[k]!) })),
          {
            label: "not known",
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
