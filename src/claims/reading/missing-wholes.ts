import type { CountFact, Fact, PercentFact } from "./facts.js";
import type { ProportionGroup } from "./link.js";
import type { SentenceReading } from "./read-sentence.js";
import { textAt } from "./cursor.js";
import { isCaseUnit } from "./units.js";
import { adjacent } from "./link-percents.js";

/** What the text before has counted: any of it may be the whole of "nine (19%)". */
export interface Named {
  /** Totals and denominators, in order of appearance. */
  readonly wholes: readonly number[];
  /** Parts and numerators, in order of appearance. */
  readonly parts: readonly number[];
  /** The groups that the latest sentence with several counts compared, in order. */
  readonly groups: readonly number[];
  /** What is left of a whole after those who were lost or excluded: not printed, but meant now and then. */
  readonly left: readonly number[];
}

type Origin = ProportionGroup["wholeFrom"];

/** Bare parts with a percentage at their side become counts of the whole that the sentence, or the text before, names. */
export function withWholes(reading: SentenceReading, named: Named) {
  const counts: CountFact[] = [];
  const origins = new Map<CountFact, Origin>();
  let leading: { value: number; unit: string | null } | null = null;
  const { facts } = reading;
  for (const [i, fact] of facts.entries()) {
    if (fact.kind === "count") counts.push(fact);
    const between = reading.tokens.slice(facts[i - 1]?.to ?? 0, fact.from);
    if (fact.kind === "whole" && fact.leads) leading = fact;
    else if (leading && between.some(({ text }) => text === ";")) leading = null;
    if (fact.kind !== "part" && !(fact.kind === "whole" && !fact.leads)) continue;
    const shared = sharedWhole(reading, i);
    if (shared) {
      counts.push({ ...shared, from: fact.from, to: fact.to, successes: fact.value });
      continue;
    }
    const next = facts[i + 1];
    if (next?.kind !== "percent" || !bracketedAfter(reading, fact, next)) continue;
    // "seven cases (14% of 63)": the percentage brings its whole.
    const [whole, origin] =
      next.trials === null
        ? wholeFor(reading, i, fact.value, holds(leading, fact) ? leading!.value : null, named, next)
        : ([next.trials, "sentence"] as const);
    const events = next.trials === null && (whole === null || origin === "text") ? eventsAmong(reading, i) : null;
    if (events && (whole === null || !fitsShare(fact.value, whole, next))) {
      counts.push(events);
      origins.set(events, "text");
      continue;
    }
    if (whole === null || (fact.value > whole && origin !== "sentence")) continue;
    const unit = (fact.kind === "whole" ? fact.unit : null) ?? leading?.unit ?? null;
    const count: CountFact = {
      kind: "count",
      from: fact.from,
      to: fact.to,
      form: "of",
      successes: fact.value,
      trials: whole,
      unit,
    };
    counts.push(count);
    origins.set(count, origin);
  }
  for (const [fact, whole] of [...outliers(reading, named), ...groupOutliers(reading, named)]) {
    const at = counts.findIndex(({ from }) => from === fact.from);
    if (at >= 0 && origins.get(counts[at]!) !== "text") continue;
    if (at >= 0) counts.splice(at, 1);
    const { from, to, value } = fact;
    counts.push({ kind: "count", from, to, form: "of", successes: value, trials: whole, unit: null });
    origins.set(counts.at(-1)!, "sentence");
  }
  return { counts, origins };
}

const fitsShare = (value: number, whole: number, { number }: PercentFact): boolean =>
  whole >= value && Math.abs((100 * value) / whole - number.value) <= 0.51 * 10 ** -number.decimals;

/** "Seventy-one palsies complicated 612 fractures (11.6%)": the percentage is that of the first number among the second. */
function eventsAmong({ tokens, facts, cursor }: Pick<SentenceReading, "tokens" | "facts" | "cursor">, at: number): CountFact | null {
  const [before, fact, percent] = [facts[at - 1], facts[at], facts[at + 1]];
  if (before?.kind !== "part" || fact?.kind !== "whole" || fact.leads || percent?.kind !== "percent") return null;
  const between = tokens.slice(before.to, fact.from);
  const plain = between.length >= 2 && between.every(({ kind, text }) => kind === "word" && !["and", "or", "of", "to"].includes(text));
  const closed = [")", "]", ";", ","].includes(textAt(cursor, percent.to));
  const off = Math.abs((100 * before.value) / fact.value - percent.number.value);
  if (!plain || !closed || before.value > fact.value || off > 5) return null;
  return { kind: "count", from: before.from, to: fact.to, form: "of", successes: before.value, trials: fact.value, unit: fact.unit };
} // prettier-ignore

/** Patients are no part of complications: a whole of events holds events alone. */
const holds = (whole: { readonly unit: string | null } | null, part: Bare): boolean =>
  whole !== null && !(whole.unit === "event" && part.kind === "whole" && isCaseUnit(part.unit));

type Bare = Extract<Fact, { readonly kind: "part" | "whole" }>;

/** "41 (87%)", "41 fractures (87%)" and "falls (41; 87%)". */
function bracketedAfter(reading: SentenceReading, fact: Bare, percent: PercentFact): boolean {
  const before = textAt(reading.cursor, percent.from - 1);
  // "five failed, and of the next 31 four failed (25% v 13%)": one percentage for each of several parts.
  const several = ["v", "vs", "versus", "and"].includes(textAt(reading.cursor, percent.to)) && reading.facts.some(({ kind, from }) => kind === "percent" && from > percent.to && from <= percent.to + 2); // prettier-ignore
  if (several) return false;
  if (before === "(" || before === "[") return adjacent(reading, fact.to, percent.from, 5);
  return ["(", "["].includes(textAt(reading.cursor, fact.from - 1)) && percent.from === fact.to + 1 && [";", ","].includes(before); // prettier-ignore
}

/**
 * "47 (58%), 26 (38%) and eight (10%)" after "81 answered": where all parts of a list but one have the same whole and
 * nothing printed explains that one, it has that whole too.
 */
function outliers(reading: SentenceReading, named: Named): [Bare, number][] {
  const { facts } = reading;
  const list = bareShares(reading);
  if (list.length < 3 || facts.some((fact) => fact.kind === "whole" && fact.leads)) return [];
  const printed = [...named.parts, ...named.wholes, ...named.left, ...facts.flatMap(wholesOf), ...facts.flatMap(partsOf)];
  const fits = ([{ value }, { number }]: [Bare, PercentFact], whole: number): boolean =>
    whole >= value && Math.abs((100 * value) / whole - number.value) <= 0.51 * 10 ** -number.decimals;
  const own = facts.slice(0, facts.indexOf(list[0]![0])).flatMap(partsOf);
  for (const whole of new Set([...named.parts, ...named.wholes, ...own].toReversed())) {
    const off = list.filter((item) => !fits(item, whole));
    if (off.length === 1 && off[0]![0].value <= whole && !printed.some((other) => fits(off[0]!, other))) return [[off[0]![0], whole]];
    if (off.length === 0) return [];
  }
  return [];
} // prettier-ignore

/** "42%, 77% and 94% (20, 37 and 45 of 48)": the count at the end of a list, when there is a percentage for each. */
function sharedWhole({ tokens, facts }: SentenceReading, at: number): CountFact | null {
  if (!facts.some(({ kind }) => kind === "percent")) return null;
  const joined = (i: number): boolean =>
    tokens.slice(facts[i]!.to, facts[i + 1]?.from).every(({ text }) => text === "," || text === "and");
  let [first, last] = [at, at];
  while (facts[last]?.kind === "part" && joined(last)) last++;
  while (facts[first - 1]?.kind === "part" && joined(first - 1)) first--;
  const end = facts[last];
  const percents = facts.filter(({ kind }) => kind === "percent");
  return end?.kind === "count" && end.form === "of" && percents.length === last - first + 1 ? end : null;
}

/** Parts with their percentage and without a whole of their own. */
function bareShares(reading: SentenceReading): [Bare, PercentFact][] {
  const { facts } = reading;
  return facts.flatMap((fact, i): [Bare, PercentFact][] => {
    const next = facts[i + 1];
    const bare = fact.kind === "part" || (fact.kind === "whole" && !fact.leads);
    return bare && next?.kind === "percent" && next.trials === null && bracketedAfter(reading, fact, next) ? [[fact, next]] : [];
  });
} // prettier-ignore

/**
 * "21 (23%) and 25 (32%)" after groups of 75 and 77: all but one fit the groups in their order, and that one would need
 * more cases than its group has.
 */
function groupOutliers(reading: SentenceReading, { groups, wholes, parts }: Named): [Bare, number][] {
  const list = bareShares(reading);
  if (groups.length < 2 || list.length !== groups.length || new Set(groups).size < 2) return [];
  const off = list.flatMap((item, i): [Bare, PercentFact, number][] => (fitsShare(item[0].value, groups[i]!, item[1]) ? [] : [[...item, groups[i]!]]));
  const [odd] = off;
  if (!odd || off.length > 1 || [...wholes, ...parts].some((whole) => fitsShare(odd[0].value, whole, odd[1]))) return [];
  const needed = (100 * odd[0].value) / (odd[1].number.value + 10 ** -odd[1].number.decimals);
  return needed > odd[2] ? [[odd[0], odd[2]]] : [];
} // prettier-ignore

/**
 * The whole of a bare part: whatever was printed before that gives its percentage; when nothing does, the one whole that
 * can be meant, or none, so that a number without a certain denominator is asked about and not accused.
 */
function wholeFor(
  reading: SentenceReading, at: number, value: number, leading: number | null, named: Named, percent: PercentFact,
): [number | null, Origin] {
  const { facts } = reading;
  const { value: share, decimals } = percent.number;
  const over = (whole: number): number => ((100 * value) / whole - share) * 10 ** decimals;
  const fits = (whole: number): boolean => fitsShare(value, whole, percent);
  const cutOff = (whole: number): boolean => whole >= value && over(whole) >= 0 && over(whole) < 1;
  const referred = referredTo(reading, at);
  if (leading !== null && (fits(leading) || cutOff(leading))) return [leading, "sentence"];
  const own = facts[at] as Bare;
  const here = facts.flatMap((fact, i) => (i === at || hasShare(reading, i) || (fact.kind === "whole" && !holds(fact, own)) ? [] : wholesOf(fact)));
  // In a list, what succeeded in one group is no whole of the next: only "of these" makes it one.
  // In a bracket of its own, "most (18; 60%)", a part tells more of what was just counted.
  const aside = percent.from === facts[at]!.to + 1 && textAt(reading.cursor, facts[at]!.from - 1) !== "of" && (reading.cursor.depth[facts[at]!.from] ?? 0) > 0;
  const earlier = facts.slice(0, at);
  const before = (referred === null && !aside ? earlier.filter((fact) => stayed(reading, fact)) : earlier).flatMap(partsOf);
  const printed = [...named.parts, ...named.wholes, ...before, ...here];
  const fit = printed.findLast(fits) ?? printed.findLast(cutOff);
  if (fit !== undefined) return [fit, here.includes(fit) ? "sentence" : "text"];
  if (earlier.some((fact) => fact.kind === "part" && fits(fact.value))) return [null, "text"];
  if (leading !== null && referred === null) return [leading, "sentence"];
  if (named.left.some(fits)) return [null, "text"];
  if (aside) {
    const same = facts.slice(0, at).find((fact) => fact.kind === "count" && fact.successes === value);
    return same?.kind === "count" ? [same.trials, "sentence"] : [null, "text"];
  }
  if (referred !== null) return [referred >= value ? referred : null, "text"];
  const candidates = (here.length > 0 ? here : named.wholes).filter((whole) => whole >= value);
  if (new Set(candidates).size !== 1) return [null, "text"];
  return [candidates[0]!, here.length > 0 ? "sentence" : "text"];
} // prettier-ignore

const wholesOf = (fact: Fact): number[] =>
  fact.kind === "whole" ? [fact.value] : fact.kind === "count" ? [fact.trials] : [];
const partsOf = (fact: Fact): number[] =>
  fact.kind === "part" ? [fact.value] : fact.kind === "count" ? [fact.successes] : [];

/** "9 patients (56%)" is a part of something, not its whole. */
function hasShare(reading: SentenceReading, i: number): boolean {
  const [fact, next] = [reading.facts[i]!, reading.facts[i + 1]];
  return (
    fact.kind === "whole" && next?.kind === "percent" && next.trials === null && bracketedAfter(reading, fact, next)
  );
}

const staying = new Set(
  "reached completed returned attended available followed analysed analyzed evaluated evaluable assessed responded answered remained included survived reviewed examined eligible randomised randomized consented".split(
    " ",
  ),
);

/** "45 reached the two-year visit; two (4%)": those who stayed are a whole for what follows. */
const stayed = ({ tokens }: SentenceReading, { to }: Fact): boolean =>
  tokens.slice(to, to + 4).some(({ text }) => staying.has(text));

const relatives = new Set(["whom", "these", "those", "them", "which"]);

/** "60 returned, of whom 45 (75%)", "19 were repeated; 12 of these (63%)": the number that "of whom" speaks of. */
function referredTo({ tokens, facts, cursor }: SentenceReading, at: number): number | null {
  const end = facts[at]!.to + 3;
  const word = tokens.findLastIndex(({ text }, i) => i < end && relatives.has(text) && tokens[i - 1]?.text === "of");
  if (word < 0) return null;
  const last = facts.findLast(
    (fact, i) => i < at && fact.to <= word && (partsOf(fact).length > 0 || fact.kind === "whole"),
  );
  if (last === undefined) return null;
  // "17 wires migrated in 210 shoulders (8.1%); 11 of these": the events are meant.
  const events = last.kind === "whole" ? eventsAmong({ tokens, facts, cursor }, facts.indexOf(last)) : null;
  if (events) return events.successes;
  return last.kind === "whole" ? last.value : (partsOf(last)[0] ?? null);
}

const gone = new Set(
  "excluded lost withdrew withdrawn died declined refused missing dropped removed ineligible missed moved emigrated defaulted unavailable".split(
    " ",
  ),
);
/** Numbers that a sentence may look back to. */
const most = 60;

/** What was named before, with the numbers of one more sentence. */
export function alsoNamed(named: Named, { tokens, facts }: SentenceReading): Named {
  const [wholes, parts] = [facts.flatMap(wholesOf), facts.flatMap(partsOf)];
  const all = [...named.wholes, ...wholes];
  const trials = facts.flatMap((fact) => (fact.kind === "count" ? [fact.trials] : []));
  const leavers = tokens.some(({ text }) => gone.has(text)) ? parts : [];
  const sum = leavers.reduce((total, value) => total + value, 0);
  const left =
    leavers.length === 0 ? [] : all.slice(-3).flatMap((whole) => [...leavers, sum].map((value) => whole - value));
  return {
    wholes: all.slice(-most),
    parts: [...named.parts, ...parts].slice(-most),
    groups: trials.length > 1 ? trials : named.groups,
    left: [...named.left, ...left].slice(-most),
  };
}
