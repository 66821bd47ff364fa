import type { Count } from "../../stats/types.js";
import type { EffectFact, IntervalFact, Quantity } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import { type EffectCandidate, effectCandidates, type EffectMeasure } from "./effect-methods.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed, listed } from "./number-text.js";
import { named, roundingOf } from "./rounding.js";

type Pair = readonly [Count, Count];

/** Judges an effect of two counted groups by every estimate and interval in common use, in every direction. */
export function judgeEffect(
  effect: EffectFact | null, interval: IntervalFact | null, counts: Pair, printedPercents: readonly number[], recomputed: Record<string, number | null>,
): Finding {
  if (effect?.measure === "number needed to treat") return judgeNumberNeeded(effect.number, counts, recomputed);
  const level = interval?.level ?? 0.95;
  const measure = effect ? (effect.measure as EffectMeasure) : null;
  const inOrder = effectCandidates({ first: counts[0], second: counts[1] }, level);
  const direct = inOrder.filter(
    (candidate) => (measure === null || candidate.measure === measure) && fit(candidate, effect, interval, printedPercents),
  );
  // The usual case, groups in the printed order, saves the other three directions.
  const candidates = direct.length > 0 ? inOrder : directions(counts).flatMap(candidatesAt(level));
  const own = measure ? candidates.filter((candidate) => candidate.measure === measure) : candidates;
  const first = own[0]!;
  recomputed.estimate = first.estimate * factorOf(first.measure, effect?.number ?? interval!.low);
  if (interval && first.interval) {
    recomputed.low = first.interval.low * factorOf(first.measure, interval.low);
    recomputed.high = first.interval.high * factorOf(first.measure, interval.low);
  }
  const fits = own.filter((candidate) => fit(candidate, effect, interval, printedPercents));
  if (fits.length > 0) return reproduced(fits, effect, interval);
  if (effect && interval) {
    const estimateOnly = own.filter((candidate) => fit(candidate, effect, null, printedPercents));
    const others = candidates.filter((candidate) => candidate.measure !== measure && fit(candidate, effect, interval, []));
    if (others.length > 0) return mislabelled(effect, others[0]!, first);
    if (estimateOnly.length > 0) return intervalFails(effect, interval, own);
  }
  const other = effect ? candidates.find((candidate) => candidate.measure !== measure && fit(candidate, effect, null, [])) : undefined;
  if (effect && other && other.measure !== "difference") return mislabelled(effect, other, first);
  return effect ? estimateFails(effect, own) : { light: "cannot be checked", because: "", reproducedBy: [] };
} // prettier-ignore

const candidatesAt =
  (level: number) =>
  ([first, second]: Pair): readonly EffectCandidate[] =>
    effectCandidates({ first, second }, level);

/** Both orders of the groups, success and failure as the event. */
function directions([a, b]: Pair): Pair[] {
  const failures = ({ successes, trials }: Count): Count => ({ successes: trials - successes, trials });
  return [[a, b], [b, a], [failures(a), failures(b)], [failures(b), failures(a)]]; // prettier-ignore
}

/** Differences are printed in points, or as fractions when below 1 with two decimals and no unit. */
function factorOf(measure: EffectMeasure, printed: Quantity): 1 | 100 {
  if (measure !== "difference") return 1;
  return printed.unit === null && printed.decimals >= 2 && Math.abs(printed.value) <= 1 ? 1 : 100;
}

function fit(
  candidate: EffectCandidate, effect: EffectFact | null, interval: IntervalFact | null, percents: readonly number[],
): boolean {
  if (effect) {
    const value = candidate.estimate * factorOf(candidate.measure, effect.number);
    const ofRounded = candidate.measure === "difference" && percents.length === 2 && Math.abs(percents[0]! - percents[1]!);
    const rounded = ofRounded !== false && Math.abs(ofRounded - Math.abs(effect.number.value)) < 1e-9;
    if (!rounded && !roundingOf([[value, effect.number]])) return false;
  }
  if (!interval) return true;
  return candidate.interval !== null && roundingFor(candidate, interval) !== null;
} // prettier-ignore

function roundingFor(candidate: EffectCandidate, { low, high }: IntervalFact) {
  const factor = factorOf(candidate.measure, high.value > 1 ? high : low);
  const pairs = [[candidate.interval!.low * factor, low], [candidate.interval!.high * factor, high]] as const; // prettier-ignore
  return roundingOf(pairs);
}

function reproduced(
  fits: readonly EffectCandidate[],
  effect: EffectFact | null,
  interval: IntervalFact | null,
): Finding {
  const names = [
    ...new Set(
      fits.map((candidate) =>
        interval ? named(candidate.name, roundingFor(candidate, interval)!) : candidate.measure,
      ),
    ),
  ];
  const estimate = effect ? `${effect.measure} ${asPrinted(effect.number)}` : fits[0]!.measure;
  const range = interval ? ` (${asPrinted(interval.low)} to ${asPrinted(interval.high)})` : "";
  const poor =
    interval && fits.every((candidate) => candidate.poor)
      ? " Reproduced, poor method: please give Newcombe's interval."
      : "";
  return {
    light: "holds",
    because: `The ${estimate}${range} is reproduced by: ${names.join("; ")}.${poor}`,
    reproducedBy: names,
  };
}

function mislabelled(effect: EffectFact, other: EffectCandidate, own: EffectCandidate): Finding {
  const right = `${fixed(own.estimate, Math.max(1, effect.number.decimals))}`;
  return {
    light: "fails",
    because: `${asPrinted(effect.number)} is the ${other.measure}; the ${effect.measure} is ${right}. Which measure is meant?`,
    reproducedBy: [`${other.measure}: ${other.name}`],
  };
}

function intervalFails(effect: EffectFact, interval: IntervalFact, own: readonly EffectCandidate[]): Finding {
  const near = own.filter(
    (candidate) =>
      candidate.interval &&
      roundingOf([[candidate.estimate * factorOf(candidate.measure, effect.number), effect.number]]),
  );
  const shown = near.slice(0, 3).map(({ name, measure, interval: limits }) => {
    const factor = factorOf(measure, interval.low);
    return `${name} ${fixed(limits!.low * factor, interval.low.decimals)} to ${fixed(limits!.high * factor, interval.high.decimals)}`;
  });
  return {
    light: "fails",
    because: `For these counts no method in common use gives ${asPrinted(interval.low)} to ${asPrinted(interval.high)} (${shown.join("; ")}). Which method was used?`,
    reproducedBy: [],
  };
}

function estimateFails(effect: EffectFact, own: readonly EffectCandidate[]): Finding {
  const factor = factorOf(own[0]!.measure, effect.number);
  const values = [...new Set(own.map(({ estimate }) => fixed(estimate * factor, effect.number.decimals)))].slice(0, 2);
  const because = `From these counts the ${effect.measure} is ${listed(values.slice(0, 1))}, not ${asPrinted(effect.number)}. Which number is right?`;
  return { light: "fails", because, reproducedBy: [] };
}

/** One over the difference, rounded either way or up, as usual. */
function judgeNumberNeeded(printed: PrintedNumber, [a, b]: Pair, recomputed: Record<string, number | null>): Finding {
  const difference = Math.abs(a.successes / a.trials - b.successes / b.trials);
  recomputed.estimate = difference === 0 ? null : 1 / difference;
  if (difference === 0)
    return {
      light: "fails",
      because: "The two proportions are equal: no number needed to treat exists.",
      reproducedBy: [],
    };
  const value = 1 / difference;
  const fromWhole = 1 / (Math.round(100 * difference) / 100);
  const fits = [value, fromWhole].some(
    (candidate) => roundingOf([[candidate, printed]]) !== null || Math.ceil(candidate) === printed.value,
  );
  const sum = `1 over the difference of ${fixed(100 * difference, 1)} points is ${fixed(value, 1)}`;
  if (fits) return { light: "holds", because: `${sum}.`, reproducedBy: ["one over the difference"] };
  return { light: "fails", because: `${sum}, not ${asPrinted(printed)}. Which number is right?`, reproducedBy: [] };
}
