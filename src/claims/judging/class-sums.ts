import type { SentenceReading } from "../reading/read-sentence.js";
import { unitOf } from "../reading/units.js";
import { type ClassList, classList } from "./class-lists.js";
import { families } from "./classes.js";
import { predicated } from "./list-predicate.js";
import type { Story } from "./story.js";
import { numberedIn, type Total, total, valueOf } from "./total.js";

const loosening = new Set(
  "unknown missing unrecorded unspecified unclear other others both bilateral bilaterally neither converted conversion attempted mixed ambidextrous undetermined".split(
    " ",
  ),
);
const partialWords = new Set("including notably mostly mainly e.g especially".split(" "));

/**
 * Classes that share out a cohort (sexes, sides, grades) against the whole beside them, or the last whole before: "80
 * children; 45 boys and 38 girls". A sum that any earlier number explains is left alone.
 */
export function classSums(reading: SentenceReading, story: Story): Total[] {
  const clause = reading.tokens.findLastIndex(({ text }) => text === ";") + 1;
  return families.flatMap((family): Total[] => {
    const list = classList(reading, family) ?? (clause > 0 ? classList(reading, family, clause) : null);
    if (!list || loose(list, reading, story)) return [];
    const parts = list.parts.map(valueOf);
    const sum = parts.reduce((a, b) => a + b, 0);
    if (list.whole) {
      const { value, place } = list.whole;
      const complete = sum > value || (!predicated(reading, list.to) && isWholeList(reading, list, place));
      if (sum !== value && (!complete || explained(sum, value, reading, story))) return [];
      if (sum < value && !list.numberFirst && !classifies(reading, list)) return [];
      return [total(Math.min(place.from, list.from), Math.max(place.to, list.to), value, parts, true)];
    }
    const earlier = numberedIn(reading).filter((fact) => fact.to <= list.parts[0]!.from);
    const own = earlier.findLast((fact) => fact.kind === "whole" && fact.unit !== null && fits(fact.unit, list));
    const whole = own?.kind === "whole" ? own : story.wholes.findLast(({ unit }) => fits(unit, list));
    if (!whole || sum === whole.value || !opensPlainly(reading, list) || predicated(reading, list.to)) return [];
    if (explained(sum, whole.value, reading, story) || numberedIn(reading).length > parts.length + earlier.length)
      return [];
    return [total(list.parts[0]!.from, list.to, whole.value, parts, true)];
  });
}

/** Words that own up to cases outside the classes or in two of them, here or for sides and treatments anywhere. */
function loose({ family, classes }: ClassList, reading: SentenceReading, { words }: Story): boolean {
  const loosened = reading.tokens.some(
    ({ text }, i) =>
      (family.name !== "sex" || !text.startsWith("bilateral")) &&
      (loosening.has(text) || partialWords.has(text)) &&
      !denied(reading, i),
  );
  if (loosened) return true;
  if (family.name === "side")
    return (
      ["both", "bilateral", "bilaterally"].some((word) => words.has(word)) &&
      !reading.tokens.some(({ text }, i) => text === "bilateral" && denied(reading, i))
    );
  if (family.name === "grade") return family.classes.slice(classes.length).some((names) => [...names].some((name) => name.length > 1 && words.has(name))); // prettier-ignore
  const unknown = ["unknown", "recorded", "missing"].some((word) => words.has(word));
  return family.name === "sex" ? unknown : ["converted", "conversion", "conversions", "crossed"].some((word) => words.has(word)); // prettier-ignore
}

/** "none was bilateral", "no bilateral injury". */
const denied = ({ tokens }: SentenceReading, i: number): boolean =>
  tokens.slice(Math.max(0, i - 3), i).some(({ text }) => ["no", "none", "not", "neither"].includes(text));

/** True when the sum is a number of cases printed before, or the whole less one of them. */
function explained(sum: number, whole: number, reading: SentenceReading, story: Story): boolean {
  const own = numberedIn(reading).flatMap((fact) => (fact.kind === "count" ? [fact.successes, fact.trials] : [fact.value]));
  const before = story.numbers.filter((value) => value !== whole);
  return before.includes(sum) || before.includes(whole - sum) || own.includes(sum);
} // prettier-ignore

const fits = (unit: string, { family }: ClassList): boolean =>
  family.name === "sex" ? unit === "child" || unit === "case" : ["fracture", "limb", "case", "child"].includes(unit);

const joining = new Set(
  "of whom were was there with comprising comprised comprise consisting consisted included involved who the these in all we treated reviewed studied and mean age years year old followed".split(
    " ",
  ),
);

/** Nothing but joining words between the whole and its list, or before a list that the whole follows. */
function isWholeList(
  { tokens, cursor }: SentenceReading,
  list: ClassList,
  place: { from: number; to: number },
): boolean {
  const [first] = list.parts;
  const inner = list.parts.some((part) => part.from === place.from);
  if (inner && !list.numberFirst) return true;
  if (inner || place.from > first!.from) {
    const before = tokens.slice(0, list.from).map(({ text }) => text);
    return before.every(
      (word) => joining.has(word) || word === "a" || word === "total" || word === "cohort" || word === "series",
    );
  }
  const start = list.numberFirst ? first!.from : list.from;
  return (
    cursor.depth[start]! > cursor.depth[place.from]! ||
    tokens
      .slice(place.to, start)
      .every(({ kind, text }) => kind === "mark" || joining.has(text) || unitOf(text) !== null || text.length < 3)
  );
}

const classifying = new Set(
  "was were involved injured affected fractured graded classified distributed occurred side seen grade grades type in".split(
    " ",
  ),
);

/** "the right side was injured in 45": the words between class and number only say where a case belongs. */
function classifies({ tokens, facts }: SentenceReading, { from, to, family }: ClassList): boolean {
  const names = new Set(family.classes.flatMap((words) => [...words]));
  return tokens.slice(from, to).every(({ kind, text }, i) => {
    if (kind !== "word" || names.has(text) || classifying.has(text)) return true;
    if (facts.some((fact) => from + i >= fact.from && from + i < fact.to)) return true;
    return ["and", "the", "or", "of", "n", "arm", "limb", "shoulder", "arms", "sides", "hand", "fractures", "injuries"].includes(text);
  });
} // prettier-ignore

const openings = new Set(
  "there they boys girls males females the grades grade side sides sex gender laterality".split(" "),
);
const groups = new Set("group groups arm cohort subgroup closed open operative".split(" "));

/** A sentence about the whole cohort: it opens with its list, with "There were", or with the cohort's own noun. */
function opensPlainly({ tokens, facts }: SentenceReading, { parts }: ClassList): boolean {
  const clause = tokens.findLastIndex(({ text }, i) => text === ";" && i < parts[0]!.from) + 1;
  const before = tokens.slice(clause, parts[0]!.from).map(({ text }) => text);
  if (before.some((word) => groups.has(word)) || facts.some(({ kind }) => kind === "interval" || kind === "p")) return false;
  return parts[0]!.from === clause || (openings.has(before[0] ?? "") && before.length <= 6);
} // prettier-ignore
