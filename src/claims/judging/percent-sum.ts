import type { Fact, PercentFact } from "../reading/facts.js";
import type { SentenceReading } from "../reading/read-sentence.js";
import type { Total } from "./total.js";

const partition = new Set(
  "comprised comprising consisted distribution distributed divided accounted proportions shares".split(" "),
);

/** Rounded shares of a whole may miss 100 by half a unit each, no more. */
export function percentSum(reading: SentenceReading): Total[] {
  const percents = reading.facts.filter((fact: Fact): fact is PercentFact => fact.kind === "percent");
  const counted = reading.facts.some((fact) => fact.kind === "count" || fact.kind === "interval");
  if (percents.length < 3 || counted || !reading.tokens.some(({ text }) => partition.has(text))) return [];
  const sum = percents.reduce((all, { number }) => all + number.value, 0);
  const slack = (percents.length / 2) * 10 ** -Math.min(...percents.map(({ number }) => number.decimals));
  const base = {
    from: percents[0]!.from,
    to: percents.at(-1)!.to,
    whole: 100,
    parts: percents.map(({ number }) => number.value),
  };
  const text = `${base.parts.join(" + ")} = ${Math.round(sum * 1e6) / 1e6}`;
  if (Math.abs(sum - 100) <= slack + 1e-9)
    return [
      {
        ...base,
        light: "holds",
        because: `${text}, which rounding explains.`,
        reproducedBy: ["sum of rounded shares"],
      },
    ];
  return [
    {
      ...base,
      light: "fails",
      because: `${text}; ${percents.length} rounded shares cannot miss 100 by more than ${slack}. Which share is right?`,
      reproducedBy: [],
    },
  ];
}
