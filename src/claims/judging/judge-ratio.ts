import type { SentenceReading } from "../reading/read-sentence.js";
import type { Place } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";
import { roundingOf } from "./rounding.js";

/** A ratio told in two numbers, with the number it comes to. */
export interface ToldRatio extends Finding, Place {
  readonly value: number;
}

/** "1.6:1 (80 men, 50 women)" and "1 in 8 (12.5%)": ratios that stand beside what they are made of. */
export function judgeRatios(reading: SentenceReading): ToldRatio[] {
  return reading.tokens.flatMap((_, i) => partsRatio(reading, i) ?? oneInMany(reading, i) ?? []);
}

/** The two numbers of a bracket right behind "a:1", each with a word of its own. */
function partsRatio({ tokens, facts }: SentenceReading, i: number): ToldRatio | null {
  const [first, second] = [tokens[i]!.number, tokens[i + 2]?.number];
  if (!first || second?.value !== 1 || tokens[i + 1]?.text !== ":" || tokens[i + 3]?.text !== "(") return null;
  const close = tokens.findIndex(({ text }, at) => at > i && text === ")");
  const inside = facts.filter(({ from, to }) => from > i && to <= close);
  const values = inside.flatMap((fact) => (fact.kind === "part" || fact.kind === "whole" ? [fact.value] : []));
  const [over, under] = values;
  if (inside.length !== 2 || over === undefined || under === undefined || under === 0) return null;
  return { from: i, to: close, ...against(first, over / under, `${over} : ${under}`, ": 1") };
}

/** "1 in 8 (12.5%)". */
function oneInMany({ tokens, facts }: SentenceReading, i: number): ToldRatio | null {
  const many = tokens[i + 2]?.number?.value;
  if (tokens[i]!.number?.value !== 1 || tokens[i + 1]?.text !== "in" || !many || tokens[i + 3]?.text !== "(")
    return null;
  const percent = facts.find(({ from }) => from === i + 4);
  if (percent?.kind !== "percent" || percent.trials !== null) return null;
  // "(20% to 33%)" tells two.
  if (["to", "-", "and", "v"].includes(tokens[percent.to]?.text ?? "")) return null;
  const finding = against(percent.number, 100 / many, `1 in ${many}`, "%");
  // "1 in 8" is itself rounded: the share may be any that is nearer to it than to its neighbours.
  const near = percent.number.value < 100 / (many - 0.5) && percent.number.value > 100 / (many + 0.5);
  const loose = {
    light: "holds",
    because: `${asPrinted(percent.number)}% is about 1 in ${many}.`,
    reproducedBy: [],
  } as const;
  return {
    from: i,
    to: percent.to,
    ...(near && finding.light === "fails" ? { value: finding.value, ...loose } : finding),
  };
}

function against(
  printed: PrintedNumber,
  value: number,
  sum: string,
  mark: string,
): Finding & { readonly value: number } {
  const right = fixed(value, printed.decimals);
  if (roundingOf([[value, printed]]))
    return { value, light: "holds", because: `${sum} is ${right}${mark}.`, reproducedBy: ["ratio of the two"] };
  const because = `${sum} is ${right}${mark}, not ${asPrinted(printed)}${mark}. Which number is right?`;
  return { value, light: "fails", because, reproducedBy: [] };
}
