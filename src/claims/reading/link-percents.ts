import type { CountFact, PercentFact } from "./facts.js";
import type { ProportionGroup } from "./link.js";
import type { SentenceReading } from "./read-sentence.js";
import { textAt } from "./cursor.js";
import { type Named, withWholes } from "./missing-wholes.js";

type Item = CountFact | PercentFact;

/** Counts and percentages of a sentence, paired where they stand for the same thing. */
export function linkPercents(reading: SentenceReading, named: Named): ProportionGroup[] {
  const { counts, origins } = withWholes(reading, named);
  const told = toldTwice(reading, counts);
  const kept = counts.filter((count) => ![...told.values()].includes(count));
  const percents = reading.facts.filter((fact) => fact.kind === "percent");
  const pairs = pairUp(reading, kept, percents);
  const paired = new Set(pairs.map(({ percent }) => percent));
  const groups: ProportionGroup[] = kept.map((count) => {
    const pair = pairs.find((candidate) => candidate.count === count);
    const wholeFrom = origins.get(count) ?? "print";
    return {
      ...empty,
      count,
      percent: pair?.percent ?? null,
      told: told.get(count) ?? null,
      sure: pair?.sure ?? true,
      wholeFrom,
    };
  });
  for (const percent of percents)
    if (!paired.has(percent)) groups.push({ ...empty, percent: withSentenceWhole(reading, percent) });
  return groups;
}

const empty: ProportionGroup = {
  kind: "proportion", count: null, percent: null, told: null, intervals: [], limit: null, sure: true, wholeFrom: "print",
}; // prettier-ignore

/** "No nerve injury occurred in 24 adolescents (0 of 24": the count in words and the one in brackets are one. */
function toldTwice(reading: SentenceReading, counts: readonly CountFact[]): Map<CountFact, CountFact> {
  const told = new Map<CountFact, CountFact>();
  counts.forEach((count, i) => {
    const next = counts[i + 1];
    if (!next || next.from - count.to > 14 || next.form !== "of") return;
    const same =
      count.form === "none"
        ? next.successes === 0
        : count.form === "all" && [next.trials, count.trials].includes(next.successes);
    const bracket = reading.cursor.depth[next.from]! > reading.cursor.depth[count.from]!;
    if (same && bracket) told.set(next, count);
  });
  return told;
}

interface Pair {
  readonly count: CountFact;
  readonly percent: PercentFact;
  readonly sure: boolean;
}

/** Runs of equal length pair in order ("28 of 30 and 11 of 16 (93% v 69%)"); single ones pair with their neighbour. */
function pairUp(reading: SentenceReading, counts: readonly CountFact[], percents: readonly PercentFact[]): Pair[] {
  const items: Item[] = [...counts, ...percents].toSorted((a, b) => a.from - b.from);
  const runs: Item[][] = [];
  for (const item of items) {
    const last = runs.at(-1);
    if (last && last[0]!.kind === item.kind) last.push(item);
    else runs.push([item]);
  }
  const pairs: Pair[] = [];
  for (let i = 0; i < runs.length; i++) {
    const [run, next] = [runs[i]!, runs[i + 1]];
    if (!next) break;
    const pair = pairRuns(reading, run, next, runs[i + 2]);
    pairs.push(...pair);
    if (pair.length > 0 && pair.length === next.length) i++;
  }
  return pairs;
}

function pairRuns(
  reading: SentenceReading,
  run: readonly Item[],
  next: readonly Item[],
  later?: readonly Item[],
): Pair[] {
  const pair = (a: Item, b: Item, sure: boolean): Pair =>
    a.kind === "count" ? { count: a, percent: b as PercentFact, sure } : { count: b as CountFact, percent: a, sure };
  const own = run.at(-1)!.kind === "count" ? (run.at(-1) as CountFact).trials : null;
  const free = next.filter((item) => item.kind === "count" || item.trials === null || item.trials === own);
  if (free.length !== next.length || run.some((item) => item.kind === "percent" && item.trials !== null)) return [];
  if (run.length === next.length && run.length > 1) return run.map((item, i) => pair(item, next[i]!, true));
  const [last, first] = [run.at(-1)!, next[0]!];
  const near = adjacent(reading, last.to, first.from, last.kind === "count" ? 9 : 6);
  if (!near) return [];
  // "41 of 47 (87%) and 93% (28 of 30)": a percentage that opens a bracket of its own belongs to what follows.
  if (
    last.kind === "count" &&
    later &&
    first.to + 1 >= later[0]!.from &&
    textAt(reading.cursor, later[0]!.from - 1) === "(" &&
    next.length === 1 &&
    textAt(reading.cursor, first.from - 1) !== "("
  )
    return [];
  const percent = last.kind === "percent" ? last : (first as PercentFact);
  const marked = percent.marked || (percent.fraction === undefined && reading.tokens.some(({ text }) => text === "%"));
  return [pair(last, first, marked && sideBySide(reading, last, first))];
}

/** In a bracket after the other, after a comma or colon, or joined by words that say it is the same thing. */
function sideBySide(reading: SentenceReading, last: Item, first: Item): boolean {
  const before = textAt(reading.cursor, first.from - 1);
  if (["(", "[", "=", "\t", "/"].includes(before)) return true;
  if (first.from - last.to <= 2 && [",", ";", ":", "or", "-", "—"].includes(before)) return true;
  const words = reading.tokens.slice(last.to, first.from).map(({ text }) => text);
  return words.some(
    (word, i) =>
      equating.has(word) || (word === "i" && words[i + 2] === "e") || (word === "that" && words[i + 1] === "is"),
  );
}

/** Words between a count and its percentage that leave no other reading. */
const equating = new Set(
  "namely viz equivalent equal equals equating corresponding corresponds giving yielding representing amounting rate proportion".split(
    " ",
  ),
);

const breaks = new Set(
  "and but while whereas v vs versus compared than p κ kappa respectively above below exceeds exceeding excludes exclude limit least most up under over between".split(
    " ",
  ),
);

/** True when only a few words stand between, none of which starts another statement; a closed bracket without facts is passed over. */
export function adjacent(reading: SentenceReading, from: number, to: number, most: number): boolean {
  const depth = reading.cursor.depth[to] ?? 0;
  const opened = reading.cursor.depth[from - 1] ?? 0;
  let words = 0;
  for (let i = from; i < to; i++) {
    const token = reading.tokens[i]!;
    const aside = (reading.cursor.depth[i] ?? 0) > Math.max(depth, opened) || inInterval(reading, i);
    if (token.number && !(aside && isName(reading, i))) return false;
    if (aside) continue;
    if (breaks.has(token.text)) return false;
    words++;
  }
  return words <= most;
}

const inInterval = ({ facts }: SentenceReading, i: number): boolean =>
  facts.some(({ kind, from, to }) => kind === "interval" && i >= from && i < to);

/** A number that is a label, as in "Fig. 2", or of an interval, which is no statement of its own. */
const isName = (reading: SentenceReading, i: number): boolean =>
  reading.cursor.taken[i]! && !reading.facts.some(({ kind, from, to }) => kind !== "interval" && i >= from && i < to);

/** "Of 47 fractures, 87% united": the sentence's leading whole is that of its bare percentages. */
function withSentenceWhole(reading: SentenceReading, percent: PercentFact): PercentFact {
  if (percent.trials !== null) return percent;
  const leading = reading.facts.filter((fact) => fact.kind === "whole" && fact.leads && fact.to <= percent.from);
  const after = reading.tokens[percent.from - 1]?.text === ",";
  return leading.length === 1 && leading[0]!.kind === "whole" && after
    ? { ...percent, trials: leading[0]!.value }
    : percent;
}
