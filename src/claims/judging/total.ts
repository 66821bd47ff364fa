import type { CountFact, PartFact, WholeFact } from "../reading/facts.js";
import type { SentenceReading } from "../reading/read-sentence.js";
import type { Finding } from "./finding.js";

/** A statement about a whole and its parts, with its verdict and its place in the sentence. */
export interface Total extends Finding {
  readonly from: number;
  readonly to: number;
  readonly whole: number;
  readonly parts: readonly number[];
}

/** A fact that counts cases. */
export type Numbered = PartFact | WholeFact | CountFact;

export const numberedIn = ({ facts }: SentenceReading): Numbered[] =>
  facts.filter((fact): fact is Numbered => fact.kind === "part" || fact.kind === "whole" || fact.kind === "count");

export const valueOf = (fact: Numbered): number => (fact.kind === "count" ? fact.successes : fact.value);

export const depthOf = (reading: SentenceReading, fact: { readonly from: number }): number =>
  reading.cursor.depth[fact.from] ?? 0;

/** Sets parts against their whole; a sum that misses it fails only where the list is `sure` to be complete. */
export function total(from: number, to: number, whole: number, parts: readonly number[], sure: boolean): Total {
  const sum = parts.reduce((a, b) => a + b, 0);
  const text = `${parts.join(" + ")} = ${sum}`;
  const base = { from, to, whole, parts };
  if (sum === whole) return { ...base, light: "holds", because: `${text}.`, reproducedBy: ["sum of the parts"] };
  if (!sure)
    return {
      ...base,
      light: "cannot be checked",
      because: `${text} of ${whole}: are these all the parts, and does none overlap?`,
      reproducedBy: [],
    };
  return { ...base, light: "fails", because: `${text}, not ${whole}. Which number is right?`, reproducedBy: [] };
}
