import type { Doubt, Draft } from "../doubts.js";
import { questionId } from "../values/read-column.js";
import type { Value } from "../types.js";

const fewest = 8;
/** Ages this many times the span of the middle half away from it, two years at least, are asked about. */
const reach = 3;

/** Ages far from all others ("1.3" among 11 to 15): a slip of the keys, or a child unlike the others? */
export function askFarAges({ roles, names, values, lines }: Draft): Doubt[] {
  const column = roles.indexOf("age");
  const ages = (values[column] ?? []).flatMap((value, line) =>
    value.kind === "number" ? [{ line, age: value.number }] : [],
  );
  if (ages.length < fewest) return [];
  const sorted = ages.map(({ age }) => age).toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))]!;
  const span = Math.max(at(0.75) - at(0.25), 2) * reach;
  const usual = (age: number): boolean => age >= at(0.25) - span && age <= at(0.75) + span;
  const near = sorted.filter(usual);
  const [low, high] = [Math.floor(near[0]!), Math.ceil(near.at(-1)!)];
  const found = new Map<number, number[]>();
  for (const { line, age } of ages) {
    if (usual(age)) continue;
    const held = found.get(age);
    if (held) held.push(line);
    else found.set(age, [line]);
  }
  if (found.size > 5) return [];
  return [...found].map(([age, held]): Doubt => {
    const years = Number(age.toFixed(2));
    const set = (value: Value): { line: number; column: number; value: Value }[] =>
      held.map((line) => ({ line, column, value }));
    const other = [age * 10, age / 10, age / 12]
      .map((each) => Number(each.toFixed(2)))
      .find((each) => each >= low && each <= high);
    const name = names[column]!;
    return {
      id: questionId(name, "far age", `${years} years`),
      column: name,
      text: `${years} years`,
      asks: `an age of ${years} years is far from the others (${low} to ${high}): is it right?`,
      rows: held.map((line) => lines[line]!.row.number),
      blocks: held.map((line) => ({ line, column })),
      choices: [
        ...(other === undefined ? [] : [{ label: `${other} years`, sets: set({ kind: "number", number: other }) }]),
        { label: `${years} years` },
        { label: "not known", sets: set({ kind: "missing", reason: "unknown" }) },
      ],
    };
  });
}
