import type { WholeFact } from "../reading/facts.js";
import type { SentenceReading } from "../reading/read-sentence.js";
import { unitOf } from "../reading/units.js";
import { classSums } from "./class-sums.js";
import { allocationSums } from "./allocation-sums.js";
import { colonSums } from "./colon-sums.js";
import { flowSums } from "./flow-sums.js";
import { slashLists } from "./slash-lists.js";
import { trailingTotals } from "./trailing-totals.js";
import { isExhaustive } from "./exhaustive.js";
import type { Story, Whole } from "./story.js";
import { predicated } from "./list-predicate.js";
import { isNested, isRest, restSums } from "./rest-sums.js";
import { percentSum } from "./percent-sum.js";
import { depthOf, type Numbered, numberedIn, type Total, total, valueOf } from "./total.js";

/** Every sum that a sentence prints: parts of a whole, reasons in a bracket, who was left, both-sided cases. */
export function judgeTotals(reading: SentenceReading, story: Story): Total[] {
  const numbered = numberedIn(reading);
  if (reading.row) return [];
  if (numbered.length < 2)
    return [
      ...slashLists(reading),
      ...restSums(reading, numbered, story),
      ...flowSums(reading, numbered, story),
      ...percentSum(reading),
    ];
  const listed = [
    ...bracketSums(reading, numbered),
    ...leadingSum(reading, numbered),
    ...earlierSum(reading, numbered, story.wholes),
    ...countRun(reading, numbered),
    ...flowSums(reading, numbered, story),
    ...trailingTotals(reading, numbered),
    ...allocationSums(reading, numbered),
    ...slashLists(reading),
    ...colonSums(reading, numbered),
    ...restSums(reading, numbered, story),
    ...bothSides(reading, numbered),
    ...percentSum(reading),
  ];
  // The same parts are judged once, by the rule that is surest of them.
  const classed = classSums(reading, story).filter(
    ({ from, to }) =>
      !listed.some((other) => other.light !== "cannot be checked" && other.from < to && from < other.to),
  );
  return [
    ...listed.filter(
      ({ light, from, to }) =>
        light !== "cannot be checked" || !classed.some((other) => other.from < to && from < other.to),
    ),
    ...classed,
  ];
}

/** "9 were excluded (4 pathological, 3 open wounds, 2 without a film)". */
function bracketSums(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  const totals: Total[] = [];
  for (const [i, fact] of numbered.entries()) {
    const depth = depthOf(reading, fact);
    const inside: Numbered[] = [];
    for (const next of numbered.slice(i + 1)) {
      if (depthOf(reading, next) <= depth) break;
      if (depthOf(reading, next) === depth + 1) inside.push(next);
    }
    if (inside.length < 2 || inside.some(({ kind }) => kind === "count")) continue;
    const open = openingBracket(reading, fact.to, inside[0]!.from);
    if (open < 0 || open - fact.to > 8 || !listLike(reading, open, inside)) continue;
    const to = inside.at(-1)!.to;
    totals.push(total(fact.from, to, valueOf(fact), inside.map(valueOf), isExhaustive(reading, open, to, inside)));
  }
  return totals;
}

/** The last bracket opened before the first part, if no other fact stands in between. */
function openingBracket(reading: SentenceReading, from: number, to: number): number {
  for (let i = from; i < to; i++) if (reading.tokens[i]!.text === "(" || reading.tokens[i]!.text === "[") return i;
  return -1;
}

/** One bracket, each part with a word of its own. */
function listLike(reading: SentenceReading, open: number, parts: readonly Numbered[]): boolean {
  const last = parts.at(-1)!;
  for (let i = open + 1; i < last.to; i++) {
    const { text } = reading.tokens[i]!;
    if (text === "n" || text === ":" || text === "v" || text === "versus" || text === "vs") return false;
    if ((text === ")" || text === "]") && (reading.cursor.depth[i] ?? 0) <= depthOf(reading, parts[0]!)) return false;
  }
  return parts.every((part) => hasWord(reading, part));
}

const hasWord = (reading: SentenceReading, part: Numbered): boolean => {
  const next = reading.tokens[part.to];
  const before = reading.tokens[part.from - 1];
  return (
    next?.kind === "word" ||
    before?.kind === "word" ||
    (before?.text === "," && reading.tokens[part.from - 2]?.kind === "word") ||
    next?.text === "("
  );
};

/** "Of 48 fractures, 9 were grade I, 17 grade II, 14 grade III and 8 grade IV." */
function leadingSum(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  const at = numbered.findIndex((fact) => fact.kind === "whole" && fact.leads);
  if (at < 0) return [];
  const lead = numbered[at] as WholeFact;
  const depth = depthOf(reading, lead);
  const stop = reading.tokens.findIndex(
    ({ text }, i) => i > lead.to && text === ";" && reading.cursor.depth[i] === depth,
  );
  const inClause = numbered
    .slice(at + 1)
    .filter((fact) => stop < 0 || fact.from < stop || semicolonList(reading, lead.to));
  const parts = inClause.filter(
    (fact) => depthOf(reading, fact) === depth && !otherUnit(reading, fact) && !isNested(reading, fact),
  );
  // "Of 80 children, 76 were followed: 40 boys and 36 girls": the colon opens the parts of the part before.
  if (parts[0] && reading.tokens.slice(parts[0].to, parts.at(-1)!.from).some(({ text }) => text === ":")) return [];
  if (parts.length < 2 || parts.some((part) => part.kind === "count" || (part.kind === "whole" && part.leads)))
    return [];
  if (leavesSome(reading) >= 0) return [];
  const to = parts.at(-1)!.to;
  const sum = parts.reduce((all, part) => all + valueOf(part), 0);
  const happens = sum < lead.value && predicated(reading, to);
  const rest = isRest(reading, parts.at(-1)!) && parts.length === 2;
  const sure = !happens && (rest || isExhaustive(reading, lead.to, to, parts));
  if (!sure && (happens || parts.some((part) => valueOf(part) > lead.value))) return [];
  return [total(lead.from, to, lead.value, parts.map(valueOf), sure)];
}

/** "The fractures comprised 9 grade I, ..." after "51 fractures": the latest whole in that unit is meant. */
function earlierSum(reading: SentenceReading, numbered: readonly Numbered[], earlier: readonly Whole[]): Total[] {
  const at = reading.tokens.findIndex(({ text }) => text === "comprised" || text === "consisted");
  const subject = at < 1 ? null : unitOf(reading.tokens[at - 1]!.text);
  const parts = numbered.filter((fact) => fact.from > at && depthOf(reading, fact) === 0);
  if (subject === null || numbered.some((fact) => fact.from < at) || parts.length < 2) return [];
  if (parts.some(({ kind }) => kind === "count")) return [];
  const whole = earlier.findLast(({ unit }) => unit === subject);
  if (!whole) return [];
  const sum = parts.reduce((all, part) => all + valueOf(part), 0);
  const several = earlier.some(({ unit, value }) => unit === subject && value === sum);
  return [total(parts[0]!.from, parts.at(-1)!.to, several ? sum : whole.value, parts.map(valueOf), true)];
}

/** "grade I, 9; grade II, 17; grade III, 14": semicolons that separate parts, not statements. */
const semicolonList = (reading: SentenceReading, from: number): boolean =>
  reading.tokens.slice(from).filter(({ text }) => text === ";").length >= 2;

/** "64 fractures in 61 children": the second number counts the same cohort in another unit. */
const otherUnit = (reading: SentenceReading, fact: Numbered): boolean =>
  fact.kind === "whole" && !fact.leads && ["in", "of", "from"].includes(reading.tokens[fact.from - 1]?.text ?? "");

/** "seen in 9, 17, 14 and 8 of 48 fractures": a run of parts that ends in a count. */
function countRun(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  return numbered.flatMap((fact, i) => {
    if (fact.kind !== "count" || fact.form !== "of") return [];
    const run: Numbered[] = [];
    for (let j = i - 1; j >= 0; j--) {
      const next = run[0] ?? fact;
      const gap = reading.tokens
        .slice(numbered[j]!.to, next.from)
        .map(({ text }) => text)
        .join(" ");
      if (numbered[j]!.kind !== "part" || ![",", "and", ", and"].includes(gap)) break;
      run.unshift(numbered[j]!);
    }
    if (run.length < 2 || measuredAgain(reading, run.length + 1)) return [];
    return [
      total(
        run[0]!.from,
        fact.to,
        fact.trials,
        [...run.map(valueOf), fact.successes],
        isExhaustive(reading, 0, fact.to, [...run, fact]),
      ),
    ];
  });
}

/** "42%, 77% and 94% (20, 37 and 45 of 48)": one group looked at several times, whose shares add to more than all. */
function measuredAgain(reading: SentenceReading, times: number): boolean {
  const percents = reading.facts.flatMap((fact) => (fact.kind === "percent" ? [fact.number.value] : []));
  return percents.length === times && percents.reduce((sum, value) => sum + value, 0) > 100 + times;
}

const leaving = new Set(["leaving", "leaves", "left", "remained"]);
const leavesSome = (reading: SentenceReading): number => reading.tokens.findIndex(({ text }) => leaving.has(text));

/** "51 fractures in 48 children (3 bilateral)": each both-sided child adds one. */
function bothSides(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  const children = numbered.filter((fact) => fact.kind === "whole" && fact.unit === "child");
  const limbs = numbered.filter((fact) => fact.kind === "whole" && (fact.unit === "fracture" || fact.unit === "limb"));
  const both = numbered.filter((fact) => {
    const words = reading.tokens.slice(fact.to, fact.to + 6).map(({ text }) => text);
    const comma = words.indexOf(",");
    return (
      fact.kind !== "count" &&
      (words[0] === "bilateral" ||
        words.slice(0, comma < 0 ? 3 : Math.min(3, comma)).includes("bilateral") ||
        (reading.tokens[fact.from - 1]?.text === "in" &&
          /^bilateral/.test(reading.tokens[fact.from - 2]?.text ?? "")) ||
        (words.includes("both") && words.includes("sides")))
    );
  });
  const people = children.filter((fact) => !both.includes(fact));
  const arms = limbs.filter((fact) => !both.includes(fact));
  if (people.length !== 1 || arms.length !== 1 || both.length !== 1) return [];
  const [c, l, b] = [valueOf(people[0]!), valueOf(arms[0]!), valueOf(both[0]!)];
  if (l < c || b > c) return [];
  const places = [people[0]!, arms[0]!, both[0]!];
  const from = Math.min(...places.map((fact) => fact.from));
  return [total(from, Math.max(...places.map(({ to }) => to)), l, [c, b], true)];
}
