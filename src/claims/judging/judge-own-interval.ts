import type { EffectFact, IntervalFact } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";
import { offCentre } from "./off-centre.js";

/** True for effects whose null value is 1 and whose intervals are symmetrical in logarithms. */
export const isRatio = (effect: EffectFact): boolean => effect.measure.endsWith("ratio");

/**
 * An estimate must lie in its interval, and where every usual method puts it there: in the middle for a difference of
 * means, near the geometric middle for a ratio, between plain and Fisher's z middle for a correlation.
 */
export function judgeOwnInterval(effect: EffectFact, interval: IntervalFact, words: ReadonlySet<string>): Finding {
  const { value } = effect.number;
  const [low, high] = [interval.low.value, interval.high.value];
  const range = `${asPrinted(interval.low)} to ${asPrinted(interval.high)}`;
  if (low > high) return fails(`The interval ${range} runs backwards. Which limits are right?`);
  const turned = effect.measure === "difference" && -value >= low && -value <= high;
  if ((value < low || value > high) && !turned)
    return fails(`${asPrinted(effect.number)} lies outside its interval ${range}. Which number is right?`);
  if (isRatio(effect) && low < 0)
    return fails(`A ratio cannot have the negative limit ${asPrinted(interval.low)}. Which limit is right?`);
  const lopsided = namesFreeMethod(words)
    ? null
    : isRatio(effect)
      ? ratioOff(effect, interval)
      : linearOff(effect, interval, turned);
  if (lopsided) return lopsided;
  return {
    light: "cannot be checked",
    because:
      "The estimate lies within its interval; without the data it cannot be recomputed. Please give the counts or the standard deviations.",
    reproducedBy: [],
  };
}

const fails = (because: string): Finding => ({ light: "fails", because, reproducedBy: [] });
const unit = ({ decimals }: PrintedNumber): number => 10 ** -decimals;

/** True when a method is named whose intervals may lie in any way about the estimate. */
export const namesFreeMethod = (words: ReadonlySet<string>): boolean =>
  [...words].some((word) => special.some((start) => word.startsWith(start)));

const special = ["bootstrap", "bayes", "credib", "posterior", "median", "hodges", "permut", "robust", "profile", "firth", "penali"]; // prettier-ignore
const skewed = ["geometric", "adjusted", "log"];

/** A difference of means lies in the middle, a correlation between the plain and the z-transformed middle. */
function linearOff(effect: EffectFact, interval: IntervalFact, turned: boolean): Finding | null {
  const { number } = effect;
  if (effect.measure === "coefficient") return offCentre(number, interval, { skew: 1.6, room: 0.1 });
  const [low, high] = [interval.low.value, interval.high.value];
  const range = `${asPrinted(interval.low)} to ${asPrinted(interval.high)}`;
  const slack = unit(number) + (unit(interval.low) + unit(interval.high)) / 2;
  const ofMeans = effect.measure === "difference" && (number.unit === "other" || (number.unit !== "percent" && effect.about.some((word) => word === "mean" || word === "means")));
  if (!ofMeans || effect.about.some((word) => skewed.includes(word))) return null;
  const middle = (low + high) / 2;
  const gap = Math.min(Math.abs(middle - number.value), turned ? Math.abs(middle + number.value) : Infinity);
  if (gap <= slack * 1.0001) return null;
  return fails(`An interval for a difference of means lies evenly about it: the middle of ${range} is ${fixed(middle, number.decimals + 1)}, not ${asPrinted(number)}. Which number is right?`);
} // prettier-ignore

/**
 * Exact and score limits of a ratio are lopsided in logarithms, the more the wider they are: at most by 0.073 times the
 * width, where one small count decides (Poisson limits of 1 to 200 events; exact limits of fourfold tables stay below).
 * Score limits of a risk ratio may go further when a group's rate nears 100%, so that ratio is asked about, not failed.
 */
function ratioOff(effect: EffectFact, interval: IntervalFact): Finding | null {
  const { number } = effect;
  const half = (printed: PrintedNumber): number => unit(printed) / 2;
  const [low, high] = [interval.low, interval.high];
  if (low.value - half(low) <= 0 || number.value - half(number) <= 0 || !Number.isFinite(high.value)) return null;
  // Over all values that print like these, the least lopsided counts.
  const lopsidedness = (e: number, l: number, h: number): number => {
    const [below, above] = [Math.log(e / l), Math.log(h / e)];
    return (above - below) / (above + below);
  };
  const corners = [-1, 1].map((side) =>
    lopsidedness(number.value + side * half(number), low.value - side * half(low), high.value - side * half(high)),
  );
  const [a, b] = [Math.min(...corners), Math.max(...corners)];
  const least = a <= 0 && b >= 0 ? 0 : Math.min(Math.abs(a), Math.abs(b));
  const width = Math.log(high.value / low.value);
  const room = 0.08 * width + 0.04;
  if (least <= room) return null;
  const middle = Math.sqrt(low.value * high.value);
  const range = `${asPrinted(low)} to ${asPrinted(high)}`;
  const because = `The middle of ${range} is ${fixed(middle, number.decimals + 1)} in logarithms, as the usual interval of a ratio has it, not ${asPrinted(number)}. Which number is right?`;
  if (effect.measure === "risk ratio" && least <= room + Math.max(0, 0.3 - 0.1 * width)) return { light: "cannot be checked", because, reproducedBy: [] };
  return fails(because);
} // prettier-ignore
