import type { CountFact, IntervalFact, Quantity } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";
import { goesBy, isUsual, type NamedInterval, proportionCandidates } from "./proportion-methods.js";
import { named, roundingOf } from "./rounding.js";

/** Judges a two-sided interval for one proportion by every method in common use. Writes Wilson's limits to `recomputed`. */
export function judgeInterval(
  count: CountFact, interval: IntervalFact, uncheckable: string | null, recomputed: Record<string, number | null>, asShare: boolean,
): Finding {
  const { successes, trials } = count;
  const level = interval.level ?? 0.95;
  const scales = scalesOf(interval);
  const estimate = successes / trials;
  const hard = impossible(count, interval, scales[0]!);
  const candidates = proportionCandidates(successes, trials, level);
  const wilson = candidates[0]!.interval;
  Object.assign(recomputed, { low: wilson.low * scales[0]!.factor, high: wilson.high * scales[0]!.factor });
  if (hard) return { light: "fails", because: hard, reproducedBy: [] };
  for (const scale of scales) {
    const fits = matching(candidates, scale);
    const own = interval.method === null ? fits : fits.filter((fit) => goesBy(fit, interval.method!));
    if (own.length > 0) return reproduced(own, interval, count);
    if (fits.length > 0 && !uncheckable) return otherwiseNamed(fits, interval, candidates, scale);
  }
  // A bare bracket that does not hold the estimate is a reference or a range of something else.
  const holds = scales.some(({ low, high, factor }) => estimate * factor >= low.value && estimate * factor <= high.value);
  if (!interval.labelled && !(holds && asShare)) return { light: "cannot be checked", because: "", reproducedBy: [] };
  if (uncheckable) return { light: "cannot be checked", because: uncheckable, reproducedBy: [] };
  return { light: "fails", because: notReproduced(count, level, scales[0]!, candidates), reproducedBy: [] };
} // prettier-ignore

interface Scale {
  readonly low: PrintedNumber;
  readonly high: PrintedNumber;
  /** 100 when the limits are in per cent, 1 when they are fractions. */
  readonly factor: 1 | 100;
}

/** The likeliest scale first: limits of at most 1 with decimals and no percent sign may be fractions. */
function scalesOf({ low, high }: { readonly low: Quantity; readonly high: Quantity }): Scale[] {
  const percent: Scale = { low, high, factor: 100 };
  const fraction: Scale = { low, high, factor: 1 };
  if (low.unit === "percent" || high.unit === "percent" || high.value > 1) return [percent];
  return high.decimals >= 2 || high.value === 1 ? [fraction, percent] : [percent, fraction];
}

function matching(candidates: readonly NamedInterval[], { low, high, factor }: Scale) {
  return candidates.flatMap((candidate) => {
    const { interval } = candidate;
    const rounding = roundingOf([
      [interval.low * factor, low],
      [interval.high * factor, high],
    ]);
    return rounding ? [{ ...candidate, rounding }] : [];
  });
}

type Fit = ReturnType<typeof matching>[number];

function reproduced(fits: readonly Fit[], interval: IntervalFact, { successes, trials }: CountFact): Finding {
  const names = fits.map((fit) => named(fit.name, fit.rounding));
  const range = `${asPrinted(interval.low)} to ${asPrinted(interval.high)}`;
  const poor = fits.every((fit) => fit.poor)
    ? ` Reproduced, poor method: with ${trials} cases please give a Wilson or exact interval.`
    : "";
  const one = fits.every((fit) => fit.name.includes("one-sided"))
    ? " The limit is one-sided, which should be printed."
    : "";
  // A rare method and a rare way of rounding at once explain nearly anything.
  if (!fits.some((fit) => isUsual(fit) || fit.rounding === "rounded"))
    return {
      light: "cannot be checked",
      because: `The interval ${range} for ${successes} of ${trials} could only be ${names.join("; ")}. Which method was used?`,
      reproducedBy: names,
    };
  return {
    light: "holds",
    because: `The interval ${range} for ${successes} of ${trials} is reproduced by: ${names.join("; ")}.${poor}${one}`,
    reproducedBy: names,
  };
}

/** The printed limits are those of another method than the one named. */
function otherwiseNamed(
  fits: readonly Fit[],
  { method }: IntervalFact,
  candidates: readonly NamedInterval[],
  scale: Scale,
): Finding {
  const names = fits.map((fit) => named(fit.name, fit.rounding));
  const right = candidates.find((candidate) => goesBy(candidate, method!))!;
  const range = `${asPrinted(scale.low)} to ${asPrinted(scale.high)}`;
  const decimals = Math.max(0, scale.low.decimals - (scale.factor === 1 ? 2 : 0));
  const because = `The limits ${range} are ${names[0]}; by the method named (${method}) they would be ${rangeText(right, decimals)}. Which method was used?`;
  return { light: "fails", because, reproducedBy: names };
}

/** Contradictions that need no method: reversed, zero width at 0 or all, beyond 0 to 100%. */
function impossible(
  { successes, trials }: CountFact,
  interval: IntervalFact,
  { low, high, factor }: Scale,
): string | null {
  if (!interval.labelled) return null;
  const range = `${asPrinted(low)} to ${asPrinted(high)}`;
  if (low.value > high.value) return `The interval ${range} runs backwards. Which limits are right?`;
  if (low.value === high.value && (successes === 0 || successes === trials)) {
    const [wilson, exact] = proportionCandidates(successes, trials, interval.level ?? 0.95)
      .filter(({ name }) => name === "Wilson" || name.startsWith("exact (C"))
      .map((candidate) => rangeText(candidate, 1));
    return `An interval of no width at ${successes} of ${trials} comes from the Wald formula, which breaks down there; Wilson gives ${wilson}, the exact method ${exact}. Please give one of these.`;
  }
  if (high.value > factor * 1.0001 || low.value < -0.0001) {
    const wilson = proportionCandidates(successes, trials, interval.level ?? 0.95)[0]!;
    const beyond = high.value > factor ? `above ${factor === 100 ? "100%" : "1"}` : "below 0";
    return `The interval ${range} has a limit ${beyond}, as the Wald formula can give; Wilson gives ${rangeText(wilson, low.decimals)} for ${successes} of ${trials}. Please give one that stays within 0 and 100%.`;
  }
  return null;
}

const rangeText = (
  { interval }: { readonly interval: { readonly low: number; readonly high: number } },
  decimals: number,
): string => `${fixed(100 * interval.low, decimals)}% to ${fixed(100 * interval.high, decimals)}%`;

function notReproduced(
  { successes, trials }: CountFact,
  level: number,
  scale: Scale,
  candidates: readonly NamedInterval[],
): string {
  const range = `${asPrinted(scale.low)} to ${asPrinted(scale.high)}`;
  const decimals = Math.max(0, scale.low.decimals - (scale.factor === 1 ? 2 : 0));
  const shown = candidates.filter(({ name }) => ["Wilson", "exact (Clopper–Pearson)"].includes(name));
  const texts = shown.map((candidate) => `${candidate.name} ${rangeText(candidate, decimals)}`).join(", ");
  return `For ${successes} of ${trials} no method in common use gives ${range} (${texts})${explained(successes, trials, level, scale)}. Which method, count and level were used?`;
}

/** Another level or a neighbouring count that would give the printed limits. */
function explained(successes: number, trials: number, level: number, scale: Scale): string {
  for (const other of [0.9, 0.95, 0.99])
    if (other !== level) {
      const fit = matching(proportionCandidates(successes, trials, other), scale)[0];
      if (fit) return `; it would be the ${100 * other}% interval by ${fit.name}`;
    }
  for (const [k, n] of [
    [successes - 1, trials],
    [successes + 1, trials],
    [successes, trials - 1],
    [successes, trials + 1],
  ] as const) {
    if (k < 0 || k > n || n < 1) continue;
    const fit = matching(proportionCandidates(k, n, level), scale)[0];
    if (fit) return `; it would fit ${k} of ${n} by ${fit.name}`;
  }
  return "";
}
