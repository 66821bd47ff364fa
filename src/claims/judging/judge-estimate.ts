import type { Count } from "../../stats/types.js";
import type { ClaimKind } from "../claim.js";
import type { EffectFact, IntervalFact, PercentFact } from "../reading/facts.js";
import type { EstimateGroup, LinkedSentence } from "../reading/link.js";
import { startOf } from "../reading/link.js";
import type { PrintedNumber } from "../text/token.js";
import { type Finding, together } from "./finding.js";
import { zOfP } from "../../stats/reported/interval-p.js";
import { judgeRelative } from "./judge-relative.js";
import { offCentre } from "./off-centre.js";
import { judgeOwnInterval, namesFreeMethod } from "./judge-own-interval.js";
import { judgeEffect } from "./judge-effect.js";
import { judgeKappa } from "./judge-kappa.js";
import { judgeMean } from "./judge-mean.js";
import type { Judged } from "./judge-proportion.js";
import { asPrinted, fixed } from "./number-text.js";
import { countsFor } from "./scope.js";

type CrossTables = readonly (readonly (readonly number[])[])[];

/** Judges an effect, a kappa or a mean with its interval. */
export function judgeEstimate(
  linked: LinkedSentence,
  group: EstimateGroup,
  tables: CrossTables,
  uncheckable: string | null,
): Judged {
  const { estimate, interval } = group;
  const recomputed: Record<string, number | null> = {};
  const printed: Record<string, PrintedNumber> = { estimate: estimate.number };
  if (interval) Object.assign(printed, { low: interval.low, high: interval.high });
  let findings: Finding[];
  let kind: ClaimKind;
  if (estimate.kind === "mean") {
    kind = "mean";
    findings = judgeMean(estimate, interval, recomputed);
    if (estimate.sd) printed.sd = estimate.sd;
    if (estimate.range) Object.assign(printed, { lowest: estimate.range.low, highest: estimate.range.high });
  } else if (estimate.kind === "kappa") {
    kind = "kappa";
    const agreement = agreementFor(linked, estimate.from);
    const contrasted = linked.estimates.some(
      ({ estimate: other }) =>
        other.kind === "kappa" && other !== estimate && (other.weights ?? "unweighted") !== "unweighted",
    );
    const own = estimate.weights === null && contrasted ? { ...estimate, weights: "unweighted" as const } : estimate;
    findings = judgeKappa(own, interval, agreement, tableFor(tables, agreement?.trials ?? null), recomputed);
    const off =
      interval && !namesFreeMethod(wordsOf(linked))
        ? offCentre(estimate.number, interval, { skew: 1.3, room: 0.05 })
        : null;
    if (off && findings[0]?.light === "cannot be checked") findings = [off];
  } else {
    kind =
      estimate.measure === "hazard ratio" || estimate.measure === "relative reduction"
        ? "ratio"
        : estimate.measure === "coefficient"
          ? "interval"
          : estimate.measure;
    findings = effectFindings(linked, estimate, interval, uncheckable, recomputed);
  }
  return { kind, printed, recomputed, ...together(findings) };
}

/** An interval for a difference or ratio whose estimate is not printed. */
export function judgeLoose(linked: LinkedSentence, interval: IntervalFact): Judged {
  const counts = countsFor(linked, interval.from);
  const recomputed: Record<string, number | null> = {};
  const printed = { low: interval.low, high: interval.high };
  const unclear: Finding = {
    light: "cannot be checked",
    because: "It is not clear what this interval belongs to: please print its estimate.",
    reproducedBy: [],
  };
  const finding = counts.length === 2 ? judgeEffect(null, interval, counts as [Count, Count], [], recomputed) : unclear;
  return { kind: "interval", printed, recomputed, ...together([finding.because ? finding : unclear]) };
}

const modelled = [
  "adjusted",
  "multivariable",
  "multivariate",
  "multivariable-adjusted",
  "pooled",
  "common",
  "stratified",
  "mantel-haenszel",
  "standardised",
  "standardized",
  "weighted",
  "matched",
  "summary",
];

function effectFindings(
  linked: LinkedSentence,
  effect: EffectFact,
  interval: IntervalFact | null,
  uncheckable: string | null,
  recomputed: Record<string, number | null>,
): Finding[] {
  const own = interval ? [judgeOwnInterval(effect, interval, wordsOf(linked))] : [];
  const model =
    effect.about.some((word) => modelled.includes(word)) ||
    ["hazard ratio", "ratio", "coefficient"].includes(effect.measure);
  if (own[0]?.light === "fails" && (model || impossible(interval!, effect))) return own;
  if (model) return [...own, unclear("An adjusted or pooled estimate cannot be recomputed from the counts.")];
  const spread = interval && effect.se ? judgeStandardError(effect.se, interval) : null;
  if (spread) own.unshift(spread);
  if (effect.measure === "relative reduction") return relativeFindings(linked, effect, recomputed);
  // Points of a score are written like points of percentage.
  const gap = effect.measure === "difference" && linked.proportions.length === 0 ? meansDifference(linked, effect) : [];
  if (effect.number.unit === "other" || gap.length > 0) return [...gap, ...own];
  const counts = countsFor(linked, effect.from);
  const percents = linked.proportions.flatMap(({ percent }) => (percent ? [percent.number.value] : []));
  if (counts.length === 2) {
    const finding = judgeEffect(effect, interval, counts as [Count, Count], percents, recomputed);
    return finding.light === "fails" && uncheckable ? [unclear(uncheckable)] : [finding];
  }
  const difference = effect.measure === "difference" ? percentDifference(linked, effect) : [];
  if (difference.length > 0) return [...difference, ...own];
  return own.length > 0
    ? own
    : [unclear(`The ${effect.measure} cannot be recomputed: please give the counts of both groups.`)];
}

const wordsOf = ({ reading }: LinkedSentence): ReadonlySet<string> => new Set(reading.tokens.map(({ text }) => text));

function relativeFindings(
  linked: LinkedSentence,
  effect: EffectFact,
  recomputed: Record<string, number | null>,
): Finding[] {
  const counts = countsFor(linked, effect.from);
  const percents = linked.proportions.flatMap(({ percent }) => (percent ? [percent.number] : []));
  const rates = counts.length === 2 ? counts : percents;
  const [first, second] = rates;
  const finding = rates.length === 2 ? judgeRelative(effect.number, [first!, second!], recomputed) : null;
  return [finding ?? unclear("The relative reduction cannot be recomputed: please give the counts of both groups.")];
}

/** The half width of an interval is 1.96 standard errors, or up to 2.8 by Student's t with few cases. */
function judgeStandardError(se: PrintedNumber, interval: IntervalFact): Finding | null {
  const half = (interval.high.value - interval.low.value) / 2;
  const slack = 10 ** -interval.low.decimals + (2 * 10 ** -se.decimals) / 2;
  const z = zOfP(1 - (interval.level ?? 0.95));
  if (half >= z * se.value - slack && half <= 1.42 * z * se.value + slack) return null;
  const because = `A standard error of ${asPrinted(se)} gives limits ${fixed(z * se.value, se.decimals)} to either side, not ${fixed(half, se.decimals)}. Which number is right?`;
  return { light: "fails", because, reproducedBy: [] };
}

/** Limits that no count can explain: backwards, beside the estimate. */
const impossible = ({ low, high }: IntervalFact, { number }: EffectFact): boolean =>
  low.value > high.value || number.value < low.value || number.value > high.value;

const unclear = (because: string): Finding => ({ light: "cannot be checked", because, reproducedBy: [] });

/** "93% v 69%, difference 24 points" without counts. */
function percentDifference(linked: LinkedSentence, effect: EffectFact): Finding[] {
  const bare = linked.proportions.flatMap((group): PercentFact[] =>
    group.percent && startOf(group) < effect.from ? [group.percent] : [],
  );
  if (bare.length !== 2 || effect.number.unit === null) return [];
  return differenceOf(effect, bare[0]!.number, bare[1]!.number, "the two percentages");
}

function meansDifference(linked: LinkedSentence, effect: EffectFact): Finding[] {
  const means = linked.estimates.flatMap(({ estimate }) =>
    estimate.kind === "mean" && estimate.centre === "mean" && estimate.from < effect.from ? [estimate] : [],
  );
  return means.length === 2 ? differenceOf(effect, means[0]!.number, means[1]!.number, "the two means") : [];
}

function differenceOf(effect: EffectFact, a: PrintedNumber, b: PrintedNumber, of: string): Finding[] {
  const value = Math.abs(a.value - b.value);
  const slack = (10 ** -a.decimals + 10 ** -b.decimals + 10 ** -effect.number.decimals) / 2;
  const text = `${asPrinted(a)} and ${asPrinted(b)} differ by ${fixed(value, Math.max(a.decimals, b.decimals))}`;
  if (Math.abs(value - Math.abs(effect.number.value)) <= slack + 1e-9)
    return [{ light: "holds", because: `${text}.`, reproducedBy: [`difference of ${of}`] }];
  return [
    {
      light: "fails",
      because: `${text}, not by ${asPrinted(effect.number)}. Which number is right?`,
      reproducedBy: [],
    },
  ];
}

interface Agreement {
  readonly value: number;
  readonly slack: number;
  readonly trials: number | null;
}

const agreeing = ["agree", "same", "identical", "concord", "exact"];

/** Observed agreement that the sentence prints: the count or percentage nearest before the kappa. */
function agreementFor(linked: LinkedSentence, at: number): Agreement | null {
  if (!linked.reading.tokens.some(({ text }) => agreeing.some((start) => text.startsWith(start)))) return null;
  const group = linked.proportions.filter((candidate) => startOf(candidate) < at).at(-1) ?? linked.proportions[0];
  if (group?.count) return { value: group.count.successes / group.count.trials, slack: 0, trials: group.count.trials };
  const percent = group?.percent?.number;
  return percent
    ? { value: percent.value / 100, slack: 10 ** -percent.decimals / 200, trials: group!.percent!.trials }
    : null;
}

function tableFor(tables: CrossTables, trials: number | null) {
  const sized = trials === null ? tables : tables.filter((table) => table.flat().reduce((a, b) => a + b, 0) === trials);
  return sized.length === 1 ? sized[0]! : null;
}
