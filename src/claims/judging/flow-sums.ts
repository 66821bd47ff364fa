import type { SentenceReading } from "../reading/read-sentence.js";
import { isNested } from "./rest-sums.js";
import type { Story } from "./story.js";
import { depthOf, type Numbered, numberedIn, type Total, valueOf } from "./total.js";

const gone = new Set(
  "removal excluded exclusion excluding exclusions lost withdrew withdrawn died declined refused missing dropped removed ineligible missed moved absent emigrated ineligibility not".split(
    " ",
  ),
);
const stayed = new Set(
  "remained remain remains analysed analyzed analysis available examined followed reviewed randomised randomized included eligible studied evaluated assessed attended completed returned left".split(
    " ",
  ),
);
const concluding = new Set("leaving leaves so thus therefore hence remained remain remains".split(" "));

/** One number of cases with what became of them. */
interface Step {
  readonly fact: Numbered;
  readonly left: boolean;
}

/**
 * Who left and who stayed: "Of 64 fractures, 9 were excluded, leaving 55", "Twelve were lost, so that 42 were examined".
 * The whole is in the sentence or the one before. Without "leaving" or "so", only more cases than there were fail.
 */
export function flowSums(reading: SentenceReading, numbered: readonly Numbered[], story: Story): Total[] {
  const plain = numbered.filter((fact) => !isNested(reading, fact) && depthOf(reading, fact) === 0);
  const last = plain.at(-1);
  if (!last || last.kind === "count" || !isStay(reading, last)) return [];
  const [first, ...others] = plain.slice(0, -1);
  const whole = first && (first.kind === "count" ? first.trials : isWhole(reading, first) ? valueOf(first) : null);
  const steps: Step[] = [
    ...(first?.kind === "count" ? [first] : whole === null && first ? [first] : []),
    ...others,
  ].map((fact) => ({ fact, left: hasLeft(reading, fact) }));
  if (steps.length === 0 || others.some(({ kind }) => kind === "count") || !steps.every(({ left }) => left)) return [];
  const parts = steps.map(({ fact }) => valueOf(fact));
  const all = whole ?? wholeBefore(story, parts, valueOf(last));
  if (all === null || all === undefined) return [];
  return [verdict(reading, Math.min(first!.from, last.from), last, all, parts)].flatMap((total) => total ?? []);
}

function verdict(reading: SentenceReading, from: number, last: Numbered, whole: number, parts: readonly number[]): Total | null {
  const rest = valueOf(last);
  const gap = whole - parts.reduce((a, b) => a + b, 0);
  const base = { from, to: last.to, whole, parts: [...parts, rest] };
  const sum = `${whole} − ${parts.join(" − ")} = ${gap}`;
  if (gap === rest) return { ...base, light: "holds", because: `${sum}.`, reproducedBy: ["whole less those who left"] };
  if (rest < gap && !concludes(reading, last)) return null;
  return { ...base, light: "fails", because: `${sum}, not ${rest}. Which number is right?`, reproducedBy: [] };
} // prettier-ignore

const isWhole = (reading: SentenceReading, fact: Numbered): boolean =>
  (fact.kind === "whole" || isScreened(reading, fact)) &&
  !fate(reading, fact).some((text, i, all) => gone.has(text) && text !== "not" && i < all.length - 1);

/** "We screened 318 records". */
const isScreened = ({ tokens }: SentenceReading, { from }: Numbered): boolean =>
  tokens
    .slice(Math.max(0, from - 3), from)
    .some(({ text }) => /^(screen|identif|retriev|found|recruit|enrol)/.test(text));

/** The words from the number to the next one: what happened to these cases. */
function fate(reading: SentenceReading, fact: Numbered): readonly string[] {
  const next = numberedIn(reading).find(({ from }) => from >= fact.to)?.from ?? reading.tokens.length;
  return reading.tokens.slice(fact.to, next).map(({ text }) => text);
}

/** "excluded 44 fractures and 29 with open growth plates": the verb before the first number serves the next ones. */
function active(reading: SentenceReading, fact: Numbered): boolean {
  const from = reading.tokens.findLastIndex(({ text }, i) => i < fact.from && text.startsWith("exclud"));
  if (from < 0) return false;
  const verbs = reading.tokens
    .slice(from + 1, fact.from)
    .some(({ text }) => stayed.has(text) || text === "were" || text === "was");
  const at = reading.tokens[from + 1]?.kind === "word" ? from + 2 : from + 1;
  return !verbs && numberedIn(reading).some((other) => other.from === at);
}

/** "9 were excluded", "exclusion of 9", "28 did not meet the criteria". */
function hasLeft(reading: SentenceReading, fact: Numbered): boolean {
  const near = reading.tokens.slice(Math.max(0, fact.from - 3), fact.from);
  const before = near.slice(near.findLastIndex(({ kind }) => kind === "mark") + 1).map(({ text }) => text);
  const after = fate(reading, fact);
  return (
    before.some((word) => word.startsWith("exclu")) || after.some((word) => gone.has(word)) || active(reading, fact)
  );
}

/** "leaving 55", "so that 42 were examined", "138 were randomised", "55 remained". */
function isStay(reading: SentenceReading, fact: Numbered): boolean {
  const before = reading.tokens[fact.from - 1]?.text;
  if (before === "leaving" || before === "leaves" || stayed.has(before ?? "")) return true;
  const after = fate(reading, fact);
  return after.some((word) => stayed.has(word)) && !after.some((word) => gone.has(word));
}

/** "leaving", "so that", or "after exclusion of": the rest is said to be all who are left. */
function concludes(reading: SentenceReading, last: Numbered): boolean {
  const words = reading.tokens.map(({ text }) => text);
  const near = [...words.slice(Math.max(0, last.from - 4), last.from), ...words.slice(last.to, last.to + 3)];
  const stays = stayed.has(words[last.from - 1] ?? "") && words.some((word) => word.startsWith("exclud"));
  return stays || near.some((word) => concluding.has(word)) || words.some((word, i) => word === "after" && words[i + 1]?.startsWith("exclu")); // prettier-ignore
}

/** The only number of the sentence before, or any earlier whole that makes the sum right. */
function wholeBefore({ wholes, latest }: Story, parts: readonly number[], rest: number): number | null {
  const sum = parts.reduce((a, b) => a + b, rest);
  if (wholes.some(({ value }) => value === sum) || latest.includes(sum)) return sum;
  return latest.length === 1 && wholes.at(-1)?.value === latest[0] ? latest[0]! : null;
}
