import type { SentenceReading } from "../reading/read-sentence.js";
import { isNested } from "./rest-sums.js";
import { depthOf, type Numbered, type Total, total, valueOf } from "./total.js";

const groups = new Set("group groups arm arms cohort".split(" "));

/** "113 were analysed: 57 in the wire and 56 in the sling group": groups named behind a colon share out the number before it. */
export function colonSums(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  const { tokens } = reading;
  const colon = tokens.findIndex(({ text }) => text === ":");
  const whole = numbered.findLast((fact) => fact.to <= colon);
  if (colon < 0 || !whole || depthOf(reading, whole) > 0) return [];
  const stop = tokens.findIndex(({ text }, i) => i > colon && (text === ";" || text === "."));
  const end = stop < 0 ? tokens.length : stop;
  const parts = numbered.filter((fact) => fact.from > colon && fact.to <= end && depthOf(reading, fact) === 0 && !isNested(reading, fact));
  if (parts.length < 2 || parts.some(({ kind }) => kind === "count")) return [];
  const joined = parts.every((part) => tokens[part.to]?.text === "in" || tokens[part.to + 1]?.text === "in");
  if (!joined || !tokens.slice(parts.at(-1)!.to, end).some(({ text }) => groups.has(text))) return [];
  return [total(whole.from, parts.at(-1)!.to, valueOf(whole), parts.map(valueOf), true)];
} // prettier-ignore
