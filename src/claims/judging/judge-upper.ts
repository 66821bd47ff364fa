import { exactOneSided } from "../../stats/one-proportion/exact-one-sided.js";
import type { CountFact, PercentFact } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";
import type { ToldRatio } from "./judge-ratio.js";
import { asPrinted, fixed } from "./number-text.js";
import { proportionCandidates } from "./proportion-methods.js";
import { prints } from "./rounding.js";

const upTo = new Set("above to as than below exceeds exceeding exceed over most".split(" "));
const allowing = /^(exclud|possib|remain|limit|confiden|compatib|rule|could|cannot)/;

/**
 * "None of 30 was infected, so that a rate of up to 2% cannot be excluded": a rate said to be excluded or left open must
 * not lie below every upper limit of the count; the rule of three must be 3 over the number.
 */
export function judgeUpper({ reading, proportions }: LinkedSentence): ToldRatio[] {
  const none = proportions.find(({ count, limit, intervals }) => count?.successes === 0 && !limit && intervals.length === 0)?.count;
  const words = reading.tokens.map(({ text }) => text);
  if (!none || !words.some((word) => allowing.test(word))) return [];
  const three = words.some((word, i) => word === "rule" && words[i + 1] === "of" && words[i + 2] === "three");
  return proportions.flatMap(({ count, percent }): ToldRatio[] => {
    if (count || !percent || percent.trials !== null) return [];
    if (!words.slice(Math.max(0, percent.from - 4), percent.from).some((word) => upTo.has(word))) return [];
    return [three ? byThree(none, percent) : byLimits(none, percent)].flatMap((told) => told ?? []);
  });
} // prettier-ignore

function byThree({ trials }: CountFact, { from, to, number }: PercentFact): ToldRatio {
  const value = Math.min(100, 300 / trials);
  const sum = `3 over ${trials} is ${fixed(value, Math.max(1, number.decimals))}%`;
  if (prints(value, number, "rounded") || Math.ceil(value) === number.value)
    return { from, to, value, light: "holds", because: `${sum}.`, reproducedBy: ["rule of three"] };
  const exact = 100 * exactOneSided(0, trials, { level: 0.95 }).upper;
  if (prints(exact, number, "rounded"))
    return { from, to, value, light: "holds", because: `${sum}; exact ${fixed(exact, 1)}%.`, reproducedBy: ["exact one-sided"] };
  return { from, to, value, light: "fails", because: `${sum}, not ${asPrinted(number)}%. Which number is right?`, reproducedBy: [] };
} // prettier-ignore

function byLimits({ trials }: CountFact, { from, to, number }: PercentFact): ToldRatio | null {
  const limits = proportionCandidates(0, trials, 0.95).filter(({ poor }) => !poor).map(({ interval }) => 100 * interval.high);
  const least = Math.min(...limits.filter((limit) => limit > 0));
  if (number.value + 10 ** -number.decimals >= least) return null;
  const because = `0 of ${trials} leaves a rate of up to ${fixed(least, 1)}% open by the narrowest usual limit, not only ${asPrinted(number)}%. Which limit is meant?`;
  return { from, to, value: least, light: "fails", because, reproducedBy: [] };
} // prettier-ignore
