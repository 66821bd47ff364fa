import type { MeanFact, Quantity } from "./facts.js";
import { type Cursor, countAt, numberAt, quantityAt, take, textAt } from "./cursor.js";
import { rangeAt } from "./ranges.js";
import { countsOthers, isCaseUnit, measures, unitAfter } from "./units.js";

type Spread = Pick<MeanFact, "sd" | "se" | "range" | "quartiles" | "unnamed">;
type Header = keyof Spread | null;
const noSpread: Spread = { sd: null, se: null, range: null, quartiles: null, unnamed: null };

/** Means and medians with what describes their spread: "mean age 12.3 years (SD 2.1; range 8 to 16)". Takes their tokens. */
export function readMeans(cursor: Cursor): MeanFact[] {
  const facts: MeanFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const text = textAt(cursor, i);
    const named = text === "mean" || text === "average" || text === "median" || text === "averaged" || text === "means";
    if (cursor.taken[i]) continue;
    const fact = named ? (onAverage(cursor, i) ?? namedMean(cursor, i)) : furtherMean(cursor, i, facts.at(-1));
    if (!fact) continue;
    take(cursor, fact);
    facts.push(fact);
  }
  return facts.length === 1 ? [ofLeadingWhole(cursor, withRangeBefore(cursor, facts[0]!))] : facts;
}

/** "In the 12 boys, the mean number of wires was": the cases that the sentence opens with. */
function ofLeadingWhole(cursor: Cursor, fact: MeanFact): MeanFact {
  if (fact.trials !== null || !["in", "among", "of", "for"].includes(textAt(cursor, 0))) return fact;
  const at = ["the", "these", "those", "all", "our"].includes(textAt(cursor, 1)) ? 2 : 1;
  const trials = countAt(cursor, at);
  const plain = cursor.tokens.slice(at + 1, fact.from).every(({ number, text }) => number === null && text !== ";");
  if (trials === null || trials < 2 || unitAfter(cursor, at + 1) === null || fact.from > at + 10 || !plain) return fact;
  return { ...fact, trials };
}

/** "62 min on average (range 48 to 110)": the number stands before its name. */
function onAverage(cursor: Cursor, i: number): MeanFact | null {
  if (textAt(cursor, i) !== "average" || textAt(cursor, i - 1) !== "on") return null;
  const at = [i - 2, i - 3].find(
    (place) => numberAt(cursor, place) !== null && quantityAt(cursor, place)!.to === i - 1,
  );
  if (at === undefined) return null;
  const tail = tailAt(cursor, i + 1, null);
  const number = quantityAt(cursor, at)!.quantity;
  const words = cursor.tokens.map(({ text }) => text);
  return {
    kind: "mean",
    from: at,
    to: tail.to,
    centre: "mean",
    number,
    ...tail.spread,
    trials: tail.trials,
    whole: sayWhole(words),
  };
}

const stops = new Set(["p", "κ", "kappa", "\t", "percentage", "proportion"]);

function namedMean(cursor: Cursor, i: number): MeanFact | null {
  let header: Header = null;
  let trials: number | null = null;
  for (let at = i + 1; at < i + 26; at++) {
    const token = cursor.tokens[at];
    if (!token || stops.has(token.text) || (at > i + 1 && ["mean", "median"].includes(token.text))) return null;
    header = headerAt(cursor, at) ?? header;
    const number = numberAt(cursor, at);
    if (!number) continue;
    const counted = countAt(cursor, at);
    if (counted !== null && (unitAfter(cursor, at + 1) || afterN(cursor, at))) {
      trials = counted;
      continue;
    }
    if (countsOthers(cursor, at + 1) || ["/", "of"].includes(textAt(cursor, at + 1))) return null;
    if (rangeAt(cursor, at, new Set(["-", "to"]))) continue;
    return meanAt(cursor, i, at, textAt(cursor, i) === "median" ? "median" : "mean", header, trials);
  }
  return null;
}

const afterN = (cursor: Cursor, at: number): boolean =>
  textAt(cursor, at - 1) === "=" && textAt(cursor, at - 2) === "n";

/** "(SD)", "± SD", "(range)" before the number: what its brackets will hold. */
function headerAt(cursor: Cursor, at: number): Header {
  const text = textAt(cursor, at);
  const close = textAt(cursor, at + 1);
  if (close !== ")" && close !== "]" && textAt(cursor, at - 1) !== "±") return null;
  return spreadNamed(text, textAt(cursor, at - 1));
}

function spreadNamed(text: string, before: string): Header {
  if (text === "sd" || text === "sds" || (text === "deviation" && before === "standard")) return "sd";
  if (text === "se" || text === "sem" || (text === "error" && before === "standard")) return "se";
  if (
    text === "iqr" ||
    text === "quartiles" ||
    (text === "range" && ["interquartile", "inter-quartile", "quartile"].includes(before))
  )
    return "quartiles";
  return text === "range" || text === "ranging" || text === "ranged" ? "range" : null;
}

function meanAt(
  cursor: Cursor, from: number, at: number, centre: MeanFact["centre"], header: Header, before: number | null,
): MeanFact {
  const { quantity, to } = quantityAt(cursor, at)!;
  const tail = tailAt(cursor, to, header);
  const words = cursor.tokens.map((token) => token.text);
  const trials = before ?? tail.trials ?? trialsAfter(cursor, tail.to);
  return { kind: "mean", from, to: tail.to, centre, number: quantity, ...tail.spread, trials, whole: sayWhole(words) };
} // prettier-ignore

/** "± 2.1", "(SD 2.1; range 8 to 16)", ", SD 2.1" after the number. */
function tailAt(cursor: Cursor, from: number, header: Header): { spread: Spread; to: number; trials: number | null } {
  let spread = noSpread;
  let trials: number | null = null;
  let to = from;
  let named: Header = null;
  let inside = false;
  for (let at = from; at < from + 24; at++) {
    const token = cursor.tokens[at];
    if (!token || cursor.taken[at]) break;
    if (token.text === "(" || token.text === "[") {
      inside = true;
      named = header;
      continue;
    }
    if (token.text === ")" || token.text === "]") {
      to = spread === noSpread ? to : at;
      if (textAt(cursor, at + 1) === "(") continue;
      break;
    }
    if (token.text === "±") {
      named = header ?? "sd";
      continue;
    }
    const name = spreadNamed(token.text, textAt(cursor, at - 1));
    if (name) named = name;
    const number = numberAt(cursor, at);
    if (!number) {
      if (!inside && token.kind === "word" && !name && !allowedOutside.has(token.text)) break;
      continue;
    }
    if (
      afterN(cursor, at) ||
      (inside && named === null && countAt(cursor, at) !== null && isCase(unitAfter(cursor, at + 1)))
    ) {
      trials = countAt(cursor, at);
      to = at + 1;
      continue;
    }
    const range = rangeAt(cursor, at, named === "quartiles" || named === "range" ? spreadJoints : rangeJoints);
    if (range && (named === "range" || named === "quartiles" || (named === null && inside && range.joint !== ","))) {
      const key = named === "quartiles" || named === "range" ? named : alone(cursor, at, range.to) ? "unnamed" : null;
      if (key) spread = { ...spread, [key]: { low: range.low, high: range.high } };
      at = range.to - 1;
    } else if (named === "sd" || named === "se") {
      spread = { ...spread, [named]: number };
      at = quantityAt(cursor, at)!.to - 1;
    } else break;
    to = at + 1;
    if (named !== "quartiles" && named !== "range") named = null;
  }
  return { spread, to, trials };
}

/** Alone in round brackets, and no years. */
const alone = (cursor: Cursor, from: number, to: number): boolean =>
  textAt(cursor, from - 1) === "(" && textAt(cursor, to) === ")" && !(cursor.tokens[from]!.number!.value >= 1900);

/** Operations and wires in a bracket are what was counted, not who had them. */
const isCase = (unit: string | null): boolean => isCaseUnit(unit) && unit !== "operation";

const rangeJoints = new Set(["to", "-", ","]);
const spreadJoints = new Set([...rangeJoints, "and"]);
const allowedOutside = new Set(
  "years year months month days mm cm degrees standard deviation error sd se range interquartile iqr of with a and was the from".split(
    " ",
  ),
);

/** "in 20 closed", "(n = 20)" shortly after. */
function trialsAfter(cursor: Cursor, from: number): number | null {
  for (let at = from; at < from + 9; at++) {
    const text = textAt(cursor, at);
    if (text === "and" || text === "v" || text === "versus" || text === ";" || text === "vs") return null;
    const count = countAt(cursor, at);
    if (count === null) {
      if (numberAt(cursor, at)) return null;
      continue;
    }
    const linked =
      ["in", "of", "among", "="].includes(textAt(cursor, at - 1)) ||
      textAt(cursor, at - 2) === "the" ||
      textAt(cursor, at - 1) === "the";
    return linked && count >= 2 && !measures(cursor, at + 1) && !countsOthers(cursor, at + 1) ? count : null;
  }
  return null;
}

/** "... and 141° (SD 18) in 16 open": a mean told by its SD alone, or by the shape of the one before. */
function furtherMean(cursor: Cursor, i: number, first: MeanFact | undefined): MeanFact | null {
  if (!numberAt(cursor, i)) return null;
  const read = quantityAt(cursor, i) as { quantity: Quantity; to: number };
  const next = textAt(cursor, read.to);
  const sd = next === "(" && spreadNamed(textAt(cursor, read.to + 1), "") === "sd";
  const likeFirst = first?.sd && (next === "±" || (next === "(" && sameShape(cursor, read.to + 1)));
  if (!sd && !likeFirst) return null;
  return meanAt(cursor, i, i, first?.centre ?? "mean", "sd", null);
}

/** "141 (18)" after "152 (SD 14)" or under a heading "mean (SD)". */
function sameShape(cursor: Cursor, i: number): boolean {
  return numberAt(cursor, i) !== null && textAt(cursor, i + 1) === ")";
}

/** "aged 8 to 16 years (mean 12.3)", "ranged from 8 to 16 with a mean of 12.3". */
function withRangeBefore(cursor: Cursor, fact: MeanFact): MeanFact {
  if (fact.range) return fact;
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (!["aged", "ranged", "ranging", "range"].includes(textAt(cursor, i)) || cursor.taken[i]) continue;
    if (textAt(cursor, i - 1).startsWith("interquartile")) continue;
    for (let at = i + 1; at < i + 4; at++) {
      const range = rangeAt(cursor, at, rangeJoints);
      if (!range) continue;
      take(cursor, { from: i, to: range.to });
      return {
        ...fact,
        from: Math.min(fact.from, i),
        to: Math.max(fact.to, range.to),
        range: { low: range.low, high: range.high },
      };
    }
  }
  return fact;
}

/** True when the text says that each value is a whole number. */
function sayWhole(words: readonly string[]): boolean {
  return words.some((word, i) => {
    const next = words[i + 1] ?? "";
    if (word === "completed" || word === "whole")
      return /^(year|month|day|week|degree|number|millimet|point|mm|cm)/.test(next);
    if (word === "integer" || word === "integers" || word === "whole-number") return true;
    if (word === "nearest") return /^(year|month|day|week|degree|millimet|mm|whole|°)/.test(next);
    return word === "number" && next === "of" && ["mean", "average"].includes(words[i - 1] ?? "");
  });
}
