import { wilson } from "../../stats/wilson.js";
import type { Claim } from "../claim.js";
import type { CountFact, IntervalFact, PercentFact } from "../reading/facts.js";
import type { ProportionGroup } from "../reading/link.js";
import type { PrintedNumber } from "../text/token.js";
import { judgeInterval } from "./judge-interval.js";
import { judgeLimit } from "./judge-limit.js";
import { asPrinted, fixed, listed } from "./number-text.js";
import { onTie, roundingOf } from "./rounding.js";
import { missesItsWhole } from "./uncertain-wholes.js";
import { type Finding, together } from "./finding.js";

export type Judged = Pick<Claim, "kind" | "printed" | "recomputed" | "arithmetic" | "because" | "reproducedBy">;

/**
 * Judges a count with its percentage, interval and one-sided limit; or a bare percentage by the counts that could give it.
 * @param uncertain the text leaves out denominators elsewhere, so that one taken from it proves nothing
 */
export function judgeProportion(group: ProportionGroup, uncheckable: string | null, uncertain: boolean): Judged {
  const { count, percent } = group;
  const printed: Record<string, PrintedNumber> = {};
  const recomputed: Record<string, number | null> = {};
  if (count) Object.assign(printed, { successes: whole(count.successes), trials: whole(count.trials) });
  if (percent) printed[percent.fraction ? "proportion" : "percent"] = percent.fraction ?? percent.number;
  if (percent?.trials) printed.trials = whole(percent.trials);
  group.intervals.forEach((interval) => Object.assign(printed, { low: interval.low, high: interval.high }));
  if (group.limit) printed.limit = group.limit.limit;
  const kind =
    count?.successes === 0 ? "zero event" : group.intervals.length > 0 || group.limit ? "interval" : "percentage";

  const findings: Finding[] = [];
  if (count && count.successes > count.trials) findings.push(moreThanAll(count));
  else if (count) {
    const share = count.successes / count.trials;
    if (percent?.fraction) recomputed.proportion = share;
    else recomputed.percent = 100 * share;
    findings.push(...told(group, count));
    if (percent) findings.push(judgePercent(group, count, percent, uncertain));
    // Without a sure whole there is nothing to hold the interval against.
    for (const interval of missesItsWhole(group) ? [] : group.intervals)
      findings.push(judgeInterval(count, interval, uncheckable, recomputed, percent !== null));
    if (group.limit) findings.push(judgeLimit(count, group.limit, recomputed));
    if (findings.length === 0) findings.push(plainCount(count));
  } else if (percent) findings.push(...barePercent(percent, group.intervals));
  return { kind, printed, recomputed, ...together(findings) };
}

const whole = (value: number): PrintedNumber => ({ value, decimals: 0 });

const moreThanAll = (count: CountFact): Finding => ({
  light: "fails",
  because: `${count.successes} of ${count.trials} is more than all of them. Which of the two numbers is right?`,
  reproducedBy: [],
});

function plainCount(count: CountFact): Finding {
  const percent = fixed((100 * count.successes) / count.trials, count.trials < 100 ? 0 : 1);
  const because = `${count.successes} of ${count.trials} is ${percent}%.${openLimit(count)}`;
  return { light: "holds", because, reproducedBy: [] };
}

/** None is not never: what the count leaves open. */
function openLimit({ successes, trials }: CountFact): string {
  if (successes !== 0) return "";
  const { high } = wilson(0, trials).interval;
  return ` A rate of up to ${fixed(100 * high, 1)}% (Wilson) is not excluded: please give an upper limit.`;
}

/** The count in words before must name the same whole. */
function told(group: ProportionGroup, count: CountFact): Finding[] {
  if (!group.told || group.told.trials === count.trials) return [];
  const because = `The words speak of ${group.told.trials}, the bracket of ${count.trials}. Which denominator is right?`;
  return [{ light: "fails", because, reproducedBy: [] }];
}

function judgePercent(
  group: ProportionGroup,
  count: CountFact,
  { number, fraction }: PercentFact,
  uncertain: boolean,
): Finding {
  const { successes, trials } = count;
  const printed = fraction ?? number;
  const [factor, mark] = fraction ? [1, ""] : [100, "%"];
  const value = (factor * successes) / trials;
  const rounding = roundingOf([[value, printed]]);
  if (rounding) {
    const tie = onTie(value, printed.decimals) ? `, on a rounding tie: both neighbours are right` : "";
    const how = rounding === "rounded" ? tie : `, ${rounding}`;
    const because = `${successes} of ${trials} is ${exactText(value, printed.decimals)}${mark}${how}.`;
    return {
      light: "holds",
      because,
      reproducedBy: [rounding === "rounded" ? "count over total" : `count over total, ${rounding}`],
    };
  }
  const ten =
    printed.decimals === 0 && printed.value % 10 === 0 && Math.abs(value - printed.value) <= 5
      ? " Was it rounded to tens?"
      : "";
  const right = fixed(value, printed.decimals);
  const because = `${successes} of ${trials} is ${right}${mark}, not ${asPrinted(printed)}${mark}${countsThatFit(number, trials)}. Which number is right?${ten}`;
  const doubt = !group.sure || group.wholeFrom === "text";
  const open = doubt && !alikely((100 * value) / factor, number.value);
  const light = open || (uncertain && group.wholeFrom === "text") ? "cannot be checked" : "fails";
  return { light, because, reproducedBy: [] };
}

/** A percentage near that of the count was meant for it; one far off may belong to something else in the sentence. */
const alikely = (value: number, printed: number): boolean => Math.abs(value - printed) <= 10;

const exactText = (value: number, decimals: number): string => {
  const more = fixed(value, decimals + 1);
  return more.endsWith("0") ? fixed(value, decimals) : more;
};

/** "; 86% would be 32 of 37", or that no count of this whole gives it. */
function countsThatFit(printed: PrintedNumber, trials: number): string {
  const counts = countsGiving(printed, trials);
  const text = `${asPrinted(printed)}%`;
  if (counts.length === 0) return `; no count of ${trials} gives ${text}`;
  return counts.length > 3 ? "" : `; ${text} would be ${listed(counts.map(String))} of ${trials}`;
}

/** The counts of `trials` that print as this percentage. */
export function countsGiving(printed: PrintedNumber, trials: number): number[] {
  const counts: number[] = [];
  const near = Math.round((printed.value * trials) / 100);
  const reach = Math.min(200, Math.ceil((trials * 1.01 * 10 ** -printed.decimals) / 100) + 1);
  for (let count = Math.max(0, near - reach); count <= Math.min(trials, near + reach); count++)
    if (roundingOf([[(100 * count) / trials, printed]])) counts.push(count);
  return counts;
}

/** Granularity: "85% of 37" is impossible, "84% of 37" is 31. */
function barePercent({ number: printed, trials, change }: PercentFact, intervals: readonly IntervalFact[]): Finding[] {
  const findings: Finding[] = [];
  if (printed.value > 100 || printed.value < 0)
    findings.push({
      light: "cannot be checked",
      because: `${asPrinted(printed)}% cannot be a share of cases.`,
      reproducedBy: [],
    });
  const beyond = intervals.find(
    ({ labelled, low, high }) => labelled && !change && (inPercent(low) < 0 || inPercent(high) > 100),
  );
  if (beyond)
    findings.push({
      light: "fails",
      because: `The interval ${asPrinted(beyond.low)} to ${asPrinted(beyond.high)} reaches beyond 0 to 100%, as the Wald formula can. Please give one that stays within.`,
      reproducedBy: [],
    });
  const outside = intervals.find(({ low, high }) => printed.value < inPercent(low) || printed.value > inPercent(high));
  if (outside?.labelled)
    findings.push({
      light: "fails",
      because: `${asPrinted(printed)}% lies outside its own interval. Which number is right?`,
      reproducedBy: [],
    });
  if (trials === null) {
    const because = `${asPrinted(printed)}% is printed without its count: please give number and denominator.`;
    return findings.length > 0 ? findings : [{ light: "cannot be checked", because, reproducedBy: [] }];
  }
  const counts = countsGiving(printed, trials);
  const near = fixed((100 * Math.round((printed.value * trials) / 100)) / trials, printed.decimals);
  if (counts.length === 0) {
    const because = `No count of ${trials} gives ${asPrinted(printed)}%; the nearest is ${Math.round((printed.value * trials) / 100)} of ${trials}, ${near}%. Which number is right?`;
    return [...findings, { light: "fails", because, reproducedBy: [] }];
  }
  const because = `${asPrinted(printed)}% of ${trials} would be ${listed(counts.slice(0, 4).map(String))}.`;
  if (intervals.length === 0 || counts.length > 3)
    return [...findings, { light: "holds", because, reproducedBy: ["count over total"] }];
  const count = (successes: number): CountFact => ({
    kind: "count",
    from: 0,
    to: 0,
    form: "of",
    successes,
    trials,
    unit: null,
  });
  const judged = counts.map((successes) =>
    intervals.map((interval) => judgeInterval(count(successes), interval, null, {}, true)),
  );
  const best = judged.find((set) => set.every(({ light }) => light !== "fails")) ?? judged[0]!;
  return [...findings, { light: "holds", because, reproducedBy: [] }, ...best];
}

export const inPercent = (limit: PrintedNumber & { readonly unit: string | null }): number =>
  limit.unit === null && limit.decimals >= 2 && Math.abs(limit.value) <= 1 ? 100 * limit.value : limit.value;
