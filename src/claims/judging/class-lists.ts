import type { SentenceReading } from "../reading/read-sentence.js";
import type { Family } from "./classes.js";
import { depthOf, type Numbered, numberedIn, valueOf } from "./total.js";

/** Numbers of cases by class, and the whole that stands beside them, if any. */
export interface ClassList {
  readonly family: Family;
  readonly parts: readonly Numbered[];
  readonly classes: readonly number[];
  readonly from: number;
  readonly to: number;
  readonly whole: { readonly value: number; readonly place: Numbered } | null;
  /** The number precedes its class: "45 boys". */
  readonly numberFirst: boolean;
}

type Item =
  | { readonly kind: "number"; readonly from: number; readonly to: number; readonly fact: Numbered }
  | { readonly kind: "class"; readonly from: number; readonly to: number; readonly index: number };

/** "None of 55 closed ones, whereas 2 of 31 open ones": two groups set against each other are no list. */
const contrasting = new Set(["whereas", "while", "but", "against", "versus", "vs", "v", "compared"]);

/** A list of one family's classes with a number each, in any of the four orders of print; null when it is not that plain. `start` leaves out what stands before. */
export function classList(reading: SentenceReading, family: Family, start = 0): ClassList | null {
  const items = itemsIn(reading, family).filter(({ from }) => from >= start);
  const classes = items.filter((item) => item.kind === "class");
  const indices = classes.map(({ index }) => index);
  const needed = family.name === "grade" || family.name === "rating" ? 3 : 2;
  if (indices.length < needed || new Set(indices).size !== indices.length) return null;
  // Without the worst class a rating may go on.
  if (family.name === "rating" && !indices.includes(3)) return null;
  if (family.name === "grade" && indices.some((index, i) => index !== i)) return null;
  const numbers = items.filter((item) => item.kind === "number");
  const spare = numbers.length - classes.length;
  if (spare !== 0 && spare !== 1) return null;
  const readings = spare === 0 ? [arranged(reading, items)] : [arranged(reading, items.slice(1)), arranged(reading, items.slice(0, -1))];
  const [leading, trailing] = spare === 0 ? [readings[0], undefined] : readings;
  const best = !trailing || (leading && leading.gap <= trailing.gap) ? leading : trailing;
  if (!best) return null;
  const outside = spare === 0 ? null : best === leading ? numbers[0]! : numbers.at(-1)!;
  const last = best.parts.at(-1)!;
  const inner = last.kind === "count" && last.form === "of" ? { value: last.trials, place: last } : null;
  if (outside && (inner || outside.fact.kind === "count")) return null;
  if (inner && reading.tokens.slice(items[0]!.from, last.from).some(({ text }) => contrasting.has(text))) return null;
  // "3 closed, 6 open and 1 assisted": one more of the list, not its whole.
  if (outside && reading.tokens[outside.from - 1]?.text === "and") return null;
  if (best.parts.slice(0, -1).some(({ kind }) => kind === "count")) return null;
  return {
    family,
    parts: best.parts,
    classes: indices,
    from: Math.min(...items.map(({ from }) => from)),
    to: Math.max(...items.filter((item) => item !== outside).map(({ to }) => to)),
    whole: outside ? { value: valueOf(outside.fact), place: outside.fact } : inner,
    numberFirst: best.numberFirst,
  };
} // prettier-ignore

function itemsIn(reading: SentenceReading, family: Family): Item[] {
  const facts = numberedIn(reading);
  const items: Item[] = facts.map((fact) => ({ kind: "number", from: fact.from, to: fact.to, fact }));
  reading.tokens.forEach((token, i) => {
    const index = token.kind === "mark" ? -1 : family.classes.findIndex((words) => words.has(token.text));
    if (index < 0) return;
    const word = token.kind === "word" && (family.name !== "grade" || token.capitals);
    const label = family.name === "grade" && token.kind === "number" && isLabel(reading, i);
    const inside = facts.some(({ from, to }) => i >= from && i < to && !(i > from && to - from > 2));
    if ((word || label) && !inside) items.push({ kind: "class", from: i, to: i + 1, index });
  });
  return items.toSorted((a, b) => a.from - b.from);
} // prettier-ignore

/** A number read as a name, the 2 of "grade 2". */
const isLabel = ({ cursor, facts }: SentenceReading, i: number): boolean =>
  cursor.taken[i]! && !facts.some(({ from, to }) => i >= from && i < to);

interface Arranged {
  readonly parts: readonly Numbered[];
  readonly gap: number;
  readonly numberFirst: boolean;
}

/** NCNC, CNCN, NNCC or CCNN. */
function arranged(reading: SentenceReading, items: readonly Item[]): Arranged | null {
  const numbers = items.filter((item) => item.kind === "number");
  const classes = items.filter((item) => item.kind === "class");
  if (numbers.length !== classes.length) return null;
  const shape = items.map(({ kind }) => (kind === "number" ? "N" : "C")).join("");
  const m = numbers.length;
  const paired = [`${"NC".repeat(m)}`, `${"CN".repeat(m)}`].includes(shape);
  if (!paired && ![`${"N".repeat(m)}${"C".repeat(m)}`, `${"C".repeat(m)}${"N".repeat(m)}`].includes(shape)) return null;
  const depths = new Set(numbers.map(({ fact }) => depthOf(reading, fact)));
  if (depths.size > 1) return null;
  const gaps = numbers.map(({ from, to }, i) => gapBetween(reading, { from, to }, classes[i]!));
  return { parts: numbers.map(({ fact }) => fact), gap: paired ? Math.max(...gaps) : 0, numberFirst: shape.startsWith("N") };
} // prettier-ignore

/** Tokens between number and class; a mark that ends a clause counts for many. */
function gapBetween(
  reading: SentenceReading,
  a: { from: number; to: number },
  b: { from: number; to: number },
): number {
  const [from, to] = a.from < b.from ? [a.to, b.from] : [b.to, a.from];
  const outer = Math.max(reading.cursor.depth[from - 1] ?? 0, reading.cursor.depth[to] ?? 0);
  return reading.tokens.slice(from, to).reduce((sum, { text }, i) => {
    if ((reading.cursor.depth[from + i] ?? 0) > outer) return sum;
    return sum + (text === ";" || text === "," || text === "and" ? 6 : 1);
  }, 0);
}
