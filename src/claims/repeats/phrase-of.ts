import type { Place } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";

const fillers = new Set(
  "the a an was were is are had has have been be in of at to and or we our with by from as for on that this these those after before which who % out overall".split(
    " ",
  ),
);

/**
 * The words a sentence says about the number at `place`: all its other words and numbers, without fillers and marks, so
 * that a time, a grade or a group printed beside it keeps two statements apart. Null with fewer than three words.
 */
export function phraseOf({ reading }: LinkedSentence, place: Place, own: readonly Place[]): string | null {
  const inside = (i: number): boolean => [place, ...own].some(({ from, to }) => i >= from && i < to);
  const words = reading.tokens.flatMap(({ kind, text }, i) =>
    kind === "mark" || inside(i) || fillers.has(text) ? [] : [text],
  );
  return words.filter((word) => /^[a-z]/.test(word)).length < 3 ? null : words.join(" ");
}
