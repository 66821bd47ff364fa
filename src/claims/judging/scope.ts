import type { Count } from "../../stats/types.js";
import type { MeanFact, PFact, StatisticFact } from "../reading/facts.js";
import { type EstimateGroup, type LinkedSentence, type ProportionGroup, startOf } from "../reading/link.js";
import { bracketAround, type NamedTests, testsNamed } from "../reading/tests-named.js";
import { missesItsWhole } from "./uncertain-wholes.js";
import { countsGiving } from "./judge-proportion.js";

/** What stands in a sentence for a p value or an effect to compare. */
export interface Scope {
  readonly counts: readonly Count[];
  readonly effect: EstimateGroup | null;
  readonly means: readonly MeanFact[];
  readonly statistic: StatisticFact | null;
  readonly paired: boolean;
}

/** Everything between the p value before and this one; what follows it when nothing stands before. */
export function scopeOf(linked: LinkedSentence, p: PFact): Scope {
  const before = linked.pValues.filter((other) => other.to <= p.from).at(-1);
  const after = linked.pValues.find((other) => other.from >= p.to);
  const inScope = (at: number): boolean => at < p.from && (!before || at >= before.to);
  let groups = linked.proportions.filter((group) => inScope(startOf(group)));
  if (!before && countsOf(groups).length < 2)
    groups = linked.proportions.filter((group) => !after || startOf(group) < after.from);
  const effects = linked.estimates.filter(({ estimate }) => estimate.kind === "effect" && inScope(estimate.from));
  const means = linked.estimates.flatMap(({ estimate }) =>
    estimate.kind === "mean" && inScope(estimate.from) ? [estimate] : [],
  );
  const statistic = linked.statistics.filter(({ from }) => inScope(from)).at(-1) ?? null;
  return {
    counts: isNested(linked) ? [] : comparedCounts(countsOf(groups)),
    effect: effects.at(-1) ?? null,
    means,
    statistic,
    paired: isPaired(linked),
  };
}

/** Counts that an effect can be computed from: those before it in its sentence, or all when there are two. */
export function countsFor(linked: LinkedSentence, at: number): readonly Count[] {
  const before = comparedCounts(countsOf(linked.proportions.filter((group) => startOf(group) < at)));
  if (before.length === 2) return before;
  const all = comparedCounts(countsOf(linked.proportions));
  return all.length === 2 ? all : before.length > 2 ? before.slice(-2) : [];
}

/** Printed counts, and percentages of a printed whole that only one count gives. */
function countsOf(groups: readonly ProportionGroup[]): Count[] {
  return groups.flatMap((group) => {
    const { count, percent } = group;
    if (missesItsWhole(group)) return [];
    if (count) return count.successes <= count.trials ? [{ successes: count.successes, trials: count.trials }] : [];
    if (!percent?.trials) return [];
    const fits = countsGiving(percent.number, percent.trials);
    return fits.length === 1 ? [{ successes: fits[0]!, trials: percent.trials }] : [];
  });
}

/** Leaves out a total that stands beside its groups. */
function comparedCounts(counts: readonly Count[]): readonly Count[] {
  if (counts.length < 3) return counts;
  const sum = (key: keyof Count, rest: readonly Count[]): number => rest.reduce((all, count) => all + count[key], 0);
  for (const [i, count] of counts.entries()) {
    const rest = counts.filter((_, j) => j !== i);
    if (sum("trials", rest) === count.trials && sum("successes", rest) === count.successes) return rest;
  }
  return counts;
}

/** "31 of 37 united, of which 29 of 31 ...": the second group is part of the first. */
function isNested({ reading }: LinkedSentence): boolean {
  return reading.tokens.some(
    ({ text }, i) =>
      text === "of" && ["these", "which", "whom", "those"].includes(reading.tokens[i + 1]?.text ?? "") && i > 3,
  );
}

const pairing = new Set(
  "preoperative preoperatively postoperative postoperatively baseline mcnemar paired matched mcnemar's contralateral readings reread twice".split(
    " ",
  ),
);

function isPaired({ reading }: LinkedSentence): boolean {
  const words = reading.tokens.map(({ text }) => text);
  return words.some((word) => pairing.has(word)) || (words.includes("before") && words.includes("after"));
}

/** Tests named in the bracket of the p value, otherwise in its sentence, otherwise in the methods. */
export function testsFor(linked: LinkedSentence, p: PFact, methods: NamedTests | null): NamedTests {
  const { tokens, cursor } = linked.reading;
  const bracket = bracketAround(tokens, cursor.depth, p.from);
  const near = bracket ? testsNamed(bracket) : null;
  if (near && (near.families.length > 0 || near.other || near.means || near.trend)) return near;
  const sentence = testsNamed(tokens);
  const own = { ...sentence, oneSided: sentence.oneSided || (near?.oneSided ?? false) };
  if (own.families.length > 0 || own.other || own.means || own.trend || !methods) return own;
  return { ...methods, oneSided: own.oneSided };
}
