import { exactOneSided } from "../../stats/one-proportion/exact-one-sided.js";
import type { CountFact, LimitFact } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed, listed } from "./number-text.js";
import { proportionCandidates } from "./proportion-methods.js";
import { named, roundingOf } from "./rounding.js";

/** Judges a single confidence limit: exact one-sided, rule of three, or one end of a two-sided interval where that may be meant. */
export function judgeLimit(count: CountFact, fact: LimitFact, recomputed: Record<string, number | null>): Finding {
  const { successes, trials } = count;
  const level = fact.level ?? 0.95;
  const upper = fact.side === null ? successes < trials / 2 : fact.side === "upper";
  const exact = exactOneSided(successes, trials, { level });
  const one: (readonly [string, number])[] = [["exact one-sided", upper ? exact.upper : exact.lower]];
  // Twice the error probability on one side is the two-sided interval of a lower level.
  if (2 * level - 1 > 0)
    one.push(
      ...proportionCandidates(successes, trials, 2 * level - 1)
        .filter(({ name }) => ["Wilson", "Jeffreys", "mid-p", "Agresti–Coull"].includes(name))
        .map(({ name, interval }) => [`${name}, one-sided`, upper ? interval.high : interval.low] as const),
    );
  if (level === 0.95 && successes === 0 && upper) one.push(["rule of three", Math.min(1, 3 / trials)]);
  if (level === 0.95 && successes === trials && !upper) one.push(["rule of three", Math.max(0, 1 - 3 / trials)]);
  const two = proportionCandidates(successes, trials, level)
    .filter(({ name }) => !name.includes("one-sided"))
    .map(({ name, interval }) => [`${name}, two-sided`, upper ? interval.high : interval.low] as const);
  const tried = fact.oneSided === true ? one : fact.oneSided === false ? two : [...one, ...two];
  const factor = fact.limit.unit !== "percent" && fact.limit.value <= 1 && fact.limit.decimals >= 2 ? 1 : 100;
  recomputed.limit = (upper ? exact.upper : exact.lower) * factor;
  const fits = matching(tried, fact.limit, factor);
  const side = upper ? "upper" : "lower";
  if (fits.length > 0)
    return {
      light: "holds",
      because: `The ${side} limit ${asPrinted(fact.limit)} for ${successes} of ${trials} is reproduced by: ${fits.join("; ")}.`,
      reproducedBy: fits,
    };
  const other = matching(fact.oneSided === true ? two : one, fact.limit, factor);
  const hint = other.length > 0 ? `; it would be ${other[0]}` : "";
  const gives = tried.slice(0, 1).map(([name, value]) => `${name} ${fixed(100 * value, 1)}%`);
  return {
    light: "fails",
    because: `For ${successes} of ${trials} the ${side} limit is ${listed(gives)}, not ${asPrinted(fact.limit)}${hint}. Which limit is meant?`,
    reproducedBy: [],
  };
}

const matching = (tried: readonly (readonly [string, number])[], printed: PrintedNumber, factor: number): string[] =>
  tried.flatMap(([name, value]) => {
    const rounding = roundingOf([[value * factor, printed]]);
    return rounding ? [named(name, rounding)] : [];
  });
