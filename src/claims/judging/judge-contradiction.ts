import { intervalP, zOfP } from "../../stats/reported/interval-p.js";
import type { EffectFact, IntervalFact, PFact } from "../reading/facts.js";
import type { NamedTests } from "../reading/tests-named.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { isRatio } from "./judge-own-interval.js";
import { asPrinted, pText } from "./number-text.js";

const unit = ({ decimals }: PrintedNumber): number => 10 ** -decimals;

/** Interval and p on opposite sides of no effect, or far apart on the same side. */
export function judgeContradiction(
  p: PFact,
  effect: EffectFact,
  interval: IntervalFact,
  tests: NamedTests,
  recomputed: Record<string, number | null>,
): Finding {
  const ratio = isRatio(effect);
  const none = ratio ? 1 : 0;
  const [low, high] = [interval.low.value, interval.high.value];
  const level = interval.level ?? 0.95;
  const alpha = 1 - level;
  const range = `${asPrinted(interval.low)} to ${asPrinted(interval.high)}`;
  const unclear: Finding = {
    light: "cannot be checked",
    because: "The p value cannot be recomputed from what is printed.",
    reproducedBy: [],
  };
  if (low >= high || !Number.isFinite(high) || (ratio && low <= 0)) return unclear;
  const implied = impliedRange(effect, interval, level, ratio);
  recomputed.p = implied.p;
  const touches = [interval.low, interval.high].some((limit) => Math.abs(limit.value - none) <= unit(limit));
  const excludes = low > none || high < none;
  const [pLow, pHigh] = printedRange(p);
  const opposite = !touches && (excludes ? pLow > alpha * 1.1 : pHigh < alpha * 0.9);
  const [zLow, zHigh] = [pHigh >= 1 ? 0 : zOfP(pHigh), pLow <= 0 ? Infinity : zOfP(pLow)];
  const gap = Math.max(0, zLow - implied.zHigh, implied.zLow - zHigh);
  const slack =
    tests.other || tests.families.length > 0 || ratio
      ? Math.max(0.6, 0.3 * implied.z)
      : Math.max(0.35, 0.25 * implied.z);
  const sum = `an estimate of ${asPrinted(effect.number)} with an interval of ${range} means p of about ${pText(implied.p)}`;
  if (opposite && gap > 0.3)
    return {
      light: "fails",
      because: `The interval ${range} ${excludes ? "excludes" : "includes"} ${none}, which does not go with ${pPrinted(p)}: ${sum}. Which of the two is right?`,
      reproducedBy: [],
    };
  if (gap > slack)
    return {
      light: "fails",
      because: `${sum.slice(0, 1).toUpperCase()}${sum.slice(1)}, not ${pPrinted(p)}. Which of the two is right?`,
      reproducedBy: [],
    };
  return {
    light: "holds",
    because: `${pPrinted(p)} goes with the interval: ${sum}.`,
    reproducedBy: ["large-sample test on the interval"],
  };
}

const pPrinted = ({ relation, number }: PFact): string =>
  number ? `p ${relation} ${asPrinted(number)}` : "a p value called not significant";

/** The p values that print like this one. */
function printedRange({ relation, number }: PFact): [low: number, high: number] {
  if (relation === "not significant" || !number) return [0.05, 1];
  if (relation === "<" || relation === "≤") return [0, number.value];
  if (relation === ">" || relation === "≥") return [number.value, 1];
  return [Math.max(0, number.value - unit(number) / 2), Math.min(1, number.value + unit(number))];
}

/** z and p implied by the printed figures, over all values that round to them. */
function impliedRange(effect: EffectFact, interval: IntervalFact, level: number, ratio: boolean) {
  const scale = (value: number): number => (ratio ? Math.log(Math.max(1e-12, value)) : value);
  const half = (number: PrintedNumber): number => unit(number) / 2;
  const at = (e: number, l: number, h: number): number =>
    Math.abs(intervalP(scale(effect.number.value + e * half(effect.number)), {
      low: scale(interval.low.value + l * half(interval.low)),
      high: scale(interval.high.value + h * half(interval.high)),
    }, { level }).z); // prettier-ignore
  const exact = intervalP(
    scale(effect.number.value),
    { low: scale(interval.low.value), high: scale(interval.high.value) },
    { level },
  );
  const sign = Math.sign(scale(effect.number.value)) || 1;
  const zs = [at(0, 0, 0), at(sign, 0.99, -0.99), at(-sign, -1, 1)];
  return { p: exact.p, z: Math.abs(exact.z), zLow: Math.min(...zs), zHigh: Math.max(...zs) };
}
