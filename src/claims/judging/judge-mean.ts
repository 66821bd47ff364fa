import { tResult } from "../../stats/measurements/t-result.js";
import { zOfP } from "../../stats/reported/interval-p.js";
import type { IntervalFact, MeanFact } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";
import { roundingOf } from "./rounding.js";

const fails = (because: string): Finding => ({ light: "fails", because, reproducedBy: [] });
const holds = (because: string, ...reproducedBy: string[]): Finding => ({ light: "holds", because, reproducedBy });
const unit = ({ decimals }: PrintedNumber): number => 10 ** -decimals;

/** Judges a mean or median by what its number of cases, range, quartiles and standard deviation allow. */
export function judgeMean(
  fact: MeanFact,
  interval: IntervalFact | null,
  recomputed: Record<string, number | null>,
): Finding[] {
  const findings = [...granularity(fact, recomputed), ...order(fact), ...spread(fact), ...ownInterval(fact, interval)];
  if (findings.length > 0) return findings;
  return [
    {
      light: "cannot be checked",
      because: `The ${fact.centre} cannot be recomputed without the values.`,
      reproducedBy: [],
    },
  ];
}

/** The mean of n whole numbers is a whole number over n. */
function granularity(
  { centre, number, trials, whole }: MeanFact,
  recomputed: Record<string, number | null>,
): Finding[] {
  if (!whole || trials === null || trials > 10_000) return [];
  if (centre === "median") {
    const half = (number.value * 2) % 1 === 0;
    return half
      ? [holds("A median of whole numbers is a whole number or a half.", "granularity")]
      : [
          fails(
            `A median of whole numbers is a whole number or a half, not ${asPrinted(number)}. Which value is right?`,
          ),
        ];
  }
  const below = Math.floor(number.value * trials);
  const sums = [below - 1, below, below + 1, below + 2].filter((sum) => sum >= 0);
  const fits = sums.filter((sum) => roundingOf([[sum / trials, number]]));
  recomputed.mean = Math.round(number.value * trials) / trials;
  if (fits.length > 0)
    return [
      holds(
        `${fits[0]} over ${trials} is ${fixed(fits[0]! / trials, number.decimals + 1)}.`,
        "sum of whole numbers over their count",
      ),
    ];
  const near = [below, below + 1].map((sum) => `${sum}/${trials} is ${fixed(sum / trials, number.decimals)}`);
  return [
    fails(
      `No sum of ${trials} whole numbers has the mean ${asPrinted(number)}: ${near.join(" and ")}. Were some values missing, or were decimals used?`,
    ),
  ];
}

/** Low end, lower quartile, centre, upper quartile, high end must come in this order. */
function order({ centre, number, range, quartiles, unnamed }: MeanFact): Finding[] {
  const inside = (name: string, { low, high }: { low: PrintedNumber; high: PrintedNumber }): Finding[] => {
    const text = `${asPrinted(low)} to ${asPrinted(high)}`;
    if (low.value > high.value) return [fails(`The ${name} ${text} runs backwards. Which limits are right?`)];
    // Rounding keeps the order; only a range about as narrow as its last digit leaves doubt.
    const coarser = Math.max(unit(low), unit(high), unit(number));
    const slack = high.value - low.value > 3 * coarser ? unit(number) / 2 : coarser / 2;
    if (number.value < low.value - slack || number.value > high.value + slack)
      return [fails(`A ${centre} of ${asPrinted(number)} lies outside its ${name} ${text}. Which number is right?`)];
    return [holds(`The ${centre} ${asPrinted(number)} lies within its ${name} ${text}.`)];
  };
  const findings = [...(range ? inside("range", range) : []), ...(unnamed ? inside("bracket", unnamed) : [])];
  if (quartiles) {
    const own = centre === "median" ? inside("quartiles", quartiles) : [];
    findings.push(...own);
    if (range && (quartiles.low.value < range.low.value || quartiles.high.value > range.high.value))
      findings.push(fails("The quartiles lie outside the range. Which limits are right?"));
  }
  return findings;
}

/** Bounds of the standard deviation from the range: range/√(2(n−1)) below, Bhatia and Davis (2000) above. */
function spread({ number, centre, sd, se, range, trials }: MeanFact): Finding[] {
  const findings: Finding[] = [];
  if (sd && sd.value < 0)
    findings.push(fails(`A standard deviation of ${asPrinted(sd)} is negative. Which value is right?`));
  if (sd && se && trials) {
    const value = sd.value / Math.sqrt(trials);
    const slack = unit(se) + unit(sd) / Math.sqrt(trials);
    if (Math.abs(value - se.value) > slack)
      findings.push(
        fails(
          `A standard deviation of ${asPrinted(sd)} over the root of ${trials} is ${fixed(value, se.decimals)}, not ${asPrinted(se)}. Which is right?`,
        ),
      );
  }
  if (!sd || !range || sd.value < 0 || centre === "median" || range.low.value > range.high.value) return findings;
  const ends = unit(range.low) / 2 + unit(range.high) / 2;
  // Ages in completed years reach a whole unit above the highest printed.
  const [low, high] = [range.low.value - unit(range.low) / 2, range.high.value + unit(range.high)];
  const width = range.high.value - range.low.value;
  const factor = trials && trials > 1 ? trials / (trials - 1) : 2;
  const middle = Math.min(Math.max(number.value, low), high);
  const most = Math.sqrt(Math.max(0, (middle - low + unit(number) / 2) * (high - middle + unit(number) / 2) * factor));
  const least = trials && trials > 1 ? Math.max(0, width - ends) / Math.sqrt(2 * (trials - 1)) : 0;
  const text = `${asPrinted(range.low)} to ${asPrinted(range.high)}`;
  const of = trials ? ` of ${trials} values` : "";
  if (sd.value - unit(sd) / 2 > most)
    findings.push(
      fails(
        `Values${of} from ${text} with mean ${asPrinted(number)} cannot have a standard deviation above ${fixed(most, Math.max(1, sd.decimals))}; ${asPrinted(sd)} is printed. Which number is right?`,
      ),
    );
  else if (sd.value + unit(sd) / 2 < least)
    findings.push(
      fails(
        `Values${of} from ${text} have a standard deviation of at least ${fixed(least, Math.max(1, sd.decimals))}; ${asPrinted(sd)} is printed. Is it a standard error?`,
      ),
    );
  else findings.push(holds(`A standard deviation of ${asPrinted(sd)} is possible with the range ${text}.`));
  return findings;
}

/** Mean with its interval: it lies in the middle, and SD and number of cases give its width. */
function ownInterval({ number, sd, trials, centre }: MeanFact, interval: IntervalFact | null): Finding[] {
  if (!interval) return [];
  const [low, high] = [interval.low.value, interval.high.value];
  const text = `${asPrinted(interval.low)} to ${asPrinted(interval.high)}`;
  if (number.value < low || number.value > high)
    return [fails(`${asPrinted(number)} lies outside its interval ${text}. Which number is right?`)];
  if (!sd || !trials || trials < 2 || centre === "median" || sd.value <= 0) return [];
  const computed = tResult(number.value, {
    standardError: sd.value / Math.sqrt(trials),
    df: trials - 1,
    level: interval.level ?? 0.95,
  });
  if (!("interval" in computed)) return [];
  const half = (computed.interval.high - computed.interval.low) / 2;
  const printedHalf = (high - low) / 2;
  const slack = (unit(interval.low) + unit(interval.high)) / 2 + (half * unit(sd)) / sd.value;
  const large = (sd.value / Math.sqrt(trials)) * zOfP(1 - (interval.level ?? 0.95));
  if ([half, large].some((candidate) => Math.abs(candidate - printedHalf) <= slack))
    return [holds(`The interval ${text} goes with the standard deviation and ${trials} cases.`, "Student's t")];
  return [
    fails(
      `With a standard deviation of ${asPrinted(sd)} and ${trials} cases the interval is ${fixed(computed.interval.low, interval.low.decimals)} to ${fixed(computed.interval.high, interval.high.decimals)}, not ${text}. Which number is right?`,
    ),
  ];
}
