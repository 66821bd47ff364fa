import type { SentenceReading } from "../reading/read-sentence.js";
import type { Story } from "./story.js";
import { type Numbered, type Total, valueOf } from "./total.js";

/** "5 of them", "two of whom": a number out of the one before. */
export function isNested({ tokens }: SentenceReading, fact: Numbered): boolean {
  const [next, after] = [tokens[fact.to]?.text, tokens[fact.to + 1]?.text ?? ""];
  return next === "of" && ["them", "these", "those", "which", "whom"].includes(after);
}

const rests = new Set(["remaining", "other", "others", "rest", "remainder"]);

/** "the remaining 6", "the other six", "the rest (6)". */
export function isRest({ tokens }: SentenceReading, fact: Numbered): boolean {
  const before = [1, 2].map((back) => tokens[fact.from - back]?.text ?? "");
  const after = tokens[fact.to]?.text ?? "";
  if (fact.kind === "count" || before[0] === "each" || after === "other" || after === "others") return false;
  return rests.has(before[0]!) || (before[0] === "(" && rests.has(before[1]!));
}

/** Sums tried among more numbers than these would fit by chance. */
const mostNumbers = 6;

/**
 * "34 of 40 united; the remaining 6 did not": the rest must be some whole less numbers named with it, in the sentence or
 * the one before. It fails only where a count or a whole with one part leaves nothing else to take it from.
 */
export function restSums(reading: SentenceReading, numbered: readonly Numbered[], story: Story): Total[] {
  return numbered.flatMap((fact, i): Total[] => {
    if (!isRest(reading, fact)) return [];
    const own = numbered.slice(0, i).filter((other) => !isNested(reading, other));
    const parted = reading.tokens.slice(own.at(-1)?.to ?? 0, fact.from).some(({ text }) => text === ";");
    if (!parted && own.some((other) => other.kind === "whole" && other.leads)) return [];
    const values = own.flatMap((other) => (other.kind === "count" ? [other.trials, other.successes] : [other.value]));
    const before = [...story.latest, ...values];
    const rest = valueOf(fact);
    if (before.length < 2 || before.length > mostNumbers || reading.row) return [];
    const from = own[0]?.from ?? fact.from;
    const fit = difference(before, rest);
    if (fit) {
      const base = { from, to: fact.to, whole: fit[0]!, parts: [...fit.slice(1), rest] };
      return [{ ...base, light: "holds", because: `${fit.join(" − ")} = ${rest}.`, reproducedBy: ["whole less its other parts"] }];
    }
    const plain = values.length === 0 ? story.latest : values;
    if (plain.length !== 2 || numbered.length > own.length + 1) return [];
    const [whole, part] = [Math.max(...plain), Math.min(...plain)];
    const because = `${whole} − ${part} = ${whole - part}, not ${rest}. Which number is right?`;
    return [{ from, to: fact.to, whole, parts: [part, rest], light: "fails", because, reproducedBy: [] }];
  });
} // prettier-ignore

/** One of the numbers less one to three of the others that makes `rest`, or null. */
function difference(numbers: readonly number[], rest: number): number[] | null {
  for (const [i, whole] of numbers.entries()) {
    const others = numbers.filter((_, j) => j !== i);
    for (let mask = 1; mask < 2 ** others.length; mask++) {
      const chosen = others.filter((_, j) => (mask >> j) % 2 === 1);
      if (chosen.length <= 3 && whole - chosen.reduce((a, b) => a + b, 0) === rest) return [whole, ...chosen];
    }
  }
  return null;
}
