import type { SentenceReading } from "../reading/read-sentence.js";
import { depthOf, type Numbered, type Total, total, valueOf } from "./total.js";

const allocating = new Set(
  "allocated assigned randomised randomized randomly divided split distributed grouped".split(" "),
);
const designs = new Set("trial trials controlled study clinical prospective comparison".split(" "));

/** "We randomised 140 patients, 71 to a cast and 69 to a splint": groups made of a whole share it out. */
export function allocationSums(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  const [whole, ...rest] = numbered;
  if (whole?.kind !== "whole" || rest.length < 2 || !allocates(reading)) return [];
  const bracketed = rest.every((part) => inOwnBracket(reading, part));
  const parts = bracketed ? rest : rest.filter((part) => goesTo(reading, part));
  if (parts.length !== rest.length || parts.some(({ kind }) => kind === "count")) return [];
  if (!bracketed && parts.some((part) => depthOf(reading, part) !== depthOf(reading, whole))) return [];
  return [total(whole.from, parts.at(-1)!.to, whole.value, parts.map(valueOf), true)];
}

/** The verb, and not the name of a design ("a randomised trial of 140 patients"). */
export const allocates = ({ tokens }: SentenceReading): boolean =>
  tokens.some(({ text }, i) => allocating.has(text) && !designs.has(tokens[i + 1]?.text ?? ""));

/** "(n = 22)" behind the group's name. */
const inOwnBracket = ({ tokens }: SentenceReading, { from, to }: Numbered): boolean =>
  (tokens[from - 1]?.text === "(" || (tokens[from - 1]?.text === "=" && tokens[from - 3]?.text === "(")) &&
  tokens[to]?.text === ")";

/** "71 to a cast", "67 patients to a splint". */
const goesTo = ({ tokens }: SentenceReading, { to }: Numbered): boolean =>
  ["to", "into"].includes(tokens[to]?.text ?? "") || ["to", "into"].includes(tokens[to + 1]?.text ?? "");
