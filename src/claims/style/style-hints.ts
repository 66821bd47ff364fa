import { conclusionsIn, type OverClaim } from "../judging/over-claims.js";
import type { LinkedSentence } from "../reading/link.js";
import type { Span } from "../text/token.js";

/** A remark on wording. It is no verdict and touches no light. */
export interface StyleHint extends Span {
  readonly hint: string;
}

const hints: Partial<Record<OverClaim, string>> = {
  cause: "a causal verb: would the design carry it, or would \"was associated with\" say what was seen?",
  trend: "\"trend\" for a difference that the test leaves open: give the difference with its interval instead.",
  significant: "\"significant\" without an interval in the sentence: how large is the difference, and between which limits?",
}; // prettier-ignore

/** Remarks on wording: causal verbs, "trend", and "significant" without an interval in the same sentence. */
export function styleHints(text: string, sentences: readonly LinkedSentence[]): StyleHint[] {
  return sentences.flatMap(({ reading }) => {
    const bounded = reading.facts.some(({ kind }) => kind === "interval" || kind === "limit");
    return conclusionsIn(reading.tokens).flatMap(({ type, from, to }) => {
      const hint = type === "significant" && bounded ? undefined : hints[type];
      if (hint === undefined) return [];
      const [start, end] = [reading.tokens[from]!.start, reading.tokens[to - 1]!.end];
      return [{ text: text.slice(start, end), start, end, hint }];
    });
  });
}
