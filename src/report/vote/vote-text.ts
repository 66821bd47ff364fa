import type { ClubFindings } from "../../findings/club/club-findings.js";
import { expectedSteps } from "../../findings/vote/vote.js";
import type { Poll } from "../../findings/vote/vote-findings.js";
import { counted, decimalText, percentText } from "../number-text.js";

/** "0%", "10%", ... as a voter hears them. */
export const stepTexts = expectedSteps.map((step) => `${decimalText(step * 100, 0)}%`);

/** "grade IV in Series A", "Series A", for sentences. */
export function askedText({ chosen, grade }: ClubFindings): string {
  if (chosen === null) return "the series";
  return grade === null ? chosen.card.name : `grade ${grade} in ${chosen.card.name}`;
}

/** "9 of 14 would do it." */
export function wouldText({ yes, no }: Poll): string {
  return yes + no === 0 ? "Nobody has said whether to do it." : `${yes} of ${yes + no} would do it.`;
}

/** "The room expects 80% (mean of 14 hands)." */
export function expectsText({ hands, mean }: Poll): string {
  return mean === null
    ? "No hand yet."
    : `The room expects ${percentText(mean, 1)} (${hands === 1 ? "one hand" : `mean of ${counted(hands, "hand")}`}).`;
}
