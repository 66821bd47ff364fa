import type { LinkedSentence, ProportionGroup } from "../reading/link.js";
import { roundingOf } from "./rounding.js";

/** A count whose whole stands in another sentence, and whose percentage is not of that whole. */
export function missesItsWhole({ count, percent, wholeFrom }: ProportionGroup): boolean {
  if (!count || !percent || wholeFrom !== "text") return false;
  return roundingOf([[(100 * count.successes) / count.trials, percent.number]]) === null;
}

/**
 * True when a text leaves denominators out: several of its counts miss the only whole that could be meant. One such
 * count may be a slip; several are cases of groups whose size is not printed.
 */
export function leavesWholesOut(sentences: readonly LinkedSentence[]): boolean {
  const taken = sentences.flatMap(({ proportions }) =>
    proportions.filter(({ count, percent, wholeFrom }) => count && percent && wholeFrom === "text"),
  );
  const missing = taken.filter(missesItsWhole).length;
  return missing >= 2 && 3 * missing >= taken.length;
}
