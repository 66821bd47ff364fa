import type {
  CountFact, EffectFact, Fact, IntervalFact, KappaFact, LimitFact, MeanFact, PercentFact, PFact, StatisticFact,
} from "./facts.js"; // prettier-ignore
import { linkPercents } from "./link-percents.js";
import type { Named } from "./missing-wholes.js";
import type { SentenceReading } from "./read-sentence.js";

/** A count, a percentage, or both, with the interval printed for them. */
export interface ProportionGroup {
  readonly kind: "proportion";
  readonly count: CountFact | null;
  readonly percent: PercentFact | null;
  /** The same count told in words before: "No nerve injury occurred in 24 adolescents (0 of 24". */
  readonly told: CountFact | null;
  readonly intervals: readonly IntervalFact[];
  readonly limit: LimitFact | null;
  /** True when count and percentage stand side by side, so that a mismatch is the authors' and not the reader's. */
  readonly sure: boolean;
  /** Where the whole of a bare part came from. */
  readonly wholeFrom: "print" | "sentence" | "text";
}

/** An estimate with its own interval: an effect, a kappa, a mean. */
export interface EstimateGroup {
  readonly kind: "estimate";
  readonly estimate: EffectFact | KappaFact | MeanFact;
  readonly interval: IntervalFact | null;
}

export type Group = ProportionGroup | EstimateGroup;

export interface LinkedSentence {
  readonly reading: SentenceReading;
  readonly proportions: readonly ProportionGroup[];
  readonly estimates: readonly EstimateGroup[];
  readonly pValues: readonly PFact[];
  readonly statistics: readonly StatisticFact[];
  /** Intervals that belong to no printed estimate, such as that of a difference told only by its limits. */
  readonly loose: readonly IntervalFact[];
}

type Open =
  | { -readonly [Key in keyof ProportionGroup]: ProportionGroup[Key] }
  | { -readonly [Key in keyof EstimateGroup]: EstimateGroup[Key] };

/**
 * Puts together what belongs together in one sentence: percentage to count, interval to estimate.
 * @param named what the text before has counted, for "nine (19%)" without a denominator
 */
export function linkSentence(reading: SentenceReading, named: Named): LinkedSentence {
  const proportions = linkPercents(reading, named);
  const groups: Open[] = [
    ...proportions.map((group) => ({ ...group })),
    ...reading.facts.filter(isEstimate).map((estimate) => ({ kind: "estimate" as const, estimate, interval: null })),
  ].toSorted((a, b) => startOf(a) - startOf(b));
  const loose = linkIntervals(reading, groups);
  linkLimits(reading, groups);
  return {
    reading,
    proportions: groups.filter((group) => group.kind === "proportion"),
    estimates: groups.filter((group) => group.kind === "estimate"),
    pValues: reading.facts.filter((fact) => fact.kind === "p"),
    statistics: reading.facts.filter((fact) => fact.kind === "statistic"),
    loose,
  };
}

const isEstimate = (fact: Fact): fact is EffectFact | KappaFact | MeanFact =>
  fact.kind === "effect" || fact.kind === "kappa" || fact.kind === "mean";

export function startOf(group: Group): number {
  if (group.kind === "estimate") return group.estimate.from;
  const { count, percent, told } = group;
  return Math.min(count?.from ?? Infinity, percent?.from ?? Infinity, told?.from ?? Infinity);
}

function endOf(group: Group): number {
  if (group.kind === "estimate") return group.estimate.to;
  const { count, percent } = group;
  // "4 (6%; 95% CI 2 to 14) of 68": the interval stands inside the count.
  if (count && percent && percent.from > count.from && percent.to < count.to) return percent.to;
  return Math.max(count?.to ?? -1, percent?.to ?? -1);
}

/** Each run of intervals goes to the estimates just before it: one to the last, several to as many. */
function linkIntervals(reading: SentenceReading, groups: Open[]): IntervalFact[] {
  const loose: IntervalFact[] = [];
  const intervals = reading.facts.filter((fact) => fact.kind === "interval");
  for (let i = 0; i < intervals.length; i++) {
    const run = [intervals[i]!];
    while (intervals[i + 1] && !groups.some((group) => between(startOf(group), run.at(-1)!.to, intervals[i + 1]!.from)))
      run.push(intervals[++i]!);
    const before = groups.filter((group) => endOf(group) <= run[0]!.from && !hasInterval(group));
    const after = groups.filter(
      (group) =>
        startOf(group) >= run.at(-1)!.to && !hasInterval(group) && !closes(reading, run.at(-1)!.to, startOf(group)),
    );
    const about = run[0]!.about;
    const forDifference = about.some((word) => word === "difference" || word === "ratio" || word === "reduction");
    const open = (forDifference ? before.filter((group) => group.kind === "estimate") : before).filter(
      (group) => !unreadBetween(reading, endOf(group), run[0]!.from),
    );
    const holding = run.length === 1 ? estimateHolding(open, run[0]!) : undefined;
    const nearest = holding ?? (run.length === 1 && !forDifference ? justBefore(groups, run[0]!.from) : undefined);
    const targets = nearest
      ? [nearest]
      : open.length > 0
        ? open.slice(-run.length)
        : before.length === 0 && !forDifference
          ? after.slice(0, run.length)
          : [];
    if (targets.length === 0 || (targets.length < run.length && run.every((fact) => fact.labelled))) loose.push(...run);
    else targets.forEach((group, j) => attach(group, run[j]!));
  }
  return loose;
}

/** "3.4 times as high (30/36 v 22/37), 95% CI 1.1 to 10.2": the limits hold the effect before, and not the last rate. */
function estimateHolding(open: readonly Open[], { low, high }: IntervalFact): Open | undefined {
  const last = open.at(-1);
  if (last?.kind !== "proportion" || !last.count || low.unit === "percent" || high.unit === "percent") return undefined;
  const rate = last.count.successes / last.count.trials;
  if ([rate, 100 * rate].some((value) => value >= low.value && value <= high.value)) return undefined;
  return open.findLast(
    (group) =>
      group.kind === "estimate" &&
      group.estimate.number.value >= low.value &&
      group.estimate.number.value <= high.value,
  );
}

/** "94% (95% CI 90 to 99), that is 64 of 68": the percentage alone stands before the interval, in a bracket of its own. */
function justBefore(groups: readonly Open[], at: number): Open | undefined {
  return groups.find((group) => group.kind === "proportion" && !hasInterval(group) && group.percent !== null && group.count !== null && group.percent.to <= at && at - group.percent.to <= 4 && group.count.from >= at); // prettier-ignore
}

/** A bracket or a clause ends here: what stands behind it is another matter. */
const closes = (reading: SentenceReading, from: number, to: number): boolean =>
  reading.tokens.slice(from, to).some(({ text }) => text === "]" || text === ")" || text === ";");

/** "A specificity of 90%, and an area under the curve of 0.91 (95% CI ...": the interval is that of the number not read. */
const unreadBetween = (reading: SentenceReading, from: number, to: number): boolean =>
  reading.tokens.some(({ number }, i) => i >= from && i < to && number !== null && !reading.cursor.taken[i]);

const between = (at: number, low: number, high: number): boolean => at >= low && at < high;
const hasInterval = (group: Open): boolean =>
  group.kind === "estimate" ? group.interval !== null : group.intervals.length > 0;

function attach(group: Open, interval: IntervalFact): void {
  if (group.kind === "estimate") group.interval = interval;
  else group.intervals = [...group.intervals, interval];
}

function linkLimits(reading: SentenceReading, groups: Open[]): void {
  for (const fact of reading.facts) {
    if (fact.kind !== "limit") continue;
    const before = groups.filter((group) => group.kind === "proportion" && startOf(group) < fact.from).at(-1);
    const target = before ?? groups.find((group) => group.kind === "proportion");
    if (target?.kind === "proportion") target.limit = fact;
  }
}
