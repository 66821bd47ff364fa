import type { LinkedSentence } from "../reading/link.js";
import { evidenceIn } from "./evidence.js";
import { depthOf, numberedIn } from "./total.js";

/** A whole named earlier in the text. */
export interface Whole {
  readonly value: number;
  readonly unit: string;
}

/** What the text has said before the sentence at hand. */
export interface Story {
  /** Wholes with their unit, the latest last. */
  readonly wholes: readonly Whole[];
  /** Every number of cases, the latest last. */
  readonly numbers: readonly number[];
  /** The numbers of cases of the latest sentence that had some, with those before while they are only two. */
  readonly latest: readonly number[];
  /** The words of the sentence before. */
  readonly latestWords: ReadonlySet<string>;
  /** For each comparison so far, whether its numbers exclude no effect. */
  readonly evidence: readonly boolean[];
  /** The same of the sentence right before; null when it compared nothing. */
  readonly latestEvidence: boolean | null;
  /** All words of the whole text. */
  readonly words: ReadonlySet<string>;
}

/** Numbers remembered: enough for a paper, and a bound for any text. */
const most = 200;

export const storyOf = (sentences: readonly LinkedSentence[]): Story => ({
  wholes: [],
  numbers: [],
  latest: [],
  latestWords: new Set(),
  evidence: [],
  latestEvidence: null,
  words: new Set(sentences.flatMap(({ reading }) => reading.tokens.flatMap(({ kind, text }) => (kind === "word" ? [text] : [])))),
}); // prettier-ignore

/** The story with one sentence more. */
export function continued(before: Story, linked: LinkedSentence): Story {
  const { reading } = linked;
  const found = linked.pValues.length > 0 || linked.estimates.length > 0 ? evidenceIn(linked) : null;
  const evidence = found === null ? before.evidence : [...before.evidence, found].slice(-most);
  const story = { ...before, evidence, latestEvidence: found };
  const numbered = numberedIn(reading);
  const latestWords = new Set(reading.tokens.map(({ text }) => text));
  if (numbered.length === 0) return { ...story, latestWords };
  const values = numbered.flatMap((fact) => (fact.kind === "count" ? [fact.successes, fact.trials] : [fact.value]));
  const wholes = numbered.flatMap((fact): Whole[] =>
    fact.kind === "whole" && (fact.unit !== null || depthOf(reading, fact) === 0)
      ? [{ value: fact.value, unit: fact.unit ?? "case" }]
      : [],
  );
  return {
    ...story,
    wholes: [...story.wholes, ...wholes].slice(-most),
    latestWords,
    numbers: [...story.numbers, ...values].slice(-most),
    latest: values.length === 1 && story.latest.length === 1 ? [...story.latest, ...values] : values,
  };
}
