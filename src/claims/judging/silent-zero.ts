import { wilson } from "../../stats/wilson.js";
import type { Place } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";
import { isCaseUnit } from "../reading/units.js";
import type { Judged } from "./judge-proportion.js";
import { percentText } from "./number-text.js";
import type { Story } from "./story.js";

const events =
  /^(complication|infection|pals(y|ies)|refracture|re-fracture|nonunion|non-union|recurrence|death|reoperation|re-operation|migration|redisplacement|redislocation|dislocation|thrombos|failure|malunion)/;
const inferences = new Set("difference differences evidence association significant correlation longer risk more further other".split(" ")); // prettier-ignore

/**
 * "No infections occurred." without a number: no fault, but the reader needs the denominator and an upper limit. The
 * text's last whole serves for an example.
 */
export function silentZero({ reading, proportions }: LinkedSentence, story: Story): (Judged & Place) | null {
  const { tokens } = reading;
  if (reading.row || proportions.some(({ count }) => count?.successes === 0)) return null;
  const at = tokens.findIndex(({ text }, i) => (text === "no" || text === "without") && eventAfter(tokens, i) > 0);
  if (at < 0) return null;
  const to = eventAfter(tokens, at);
  const whole = story.wholes.findLast(({ unit }) => isCaseUnit(unit));
  const base = { kind: "zero event", printed: {}, arithmetic: "cannot be checked", reproducedBy: [], from: at, to } as const;
  if (!whole || whole.value < 1)
    return { ...base, recomputed: {}, because: "None of how many? Please give the denominator and an upper limit: no event is not no risk." };
  const { high } = wilson(0, whole.value).interval;
  const because = `If none of ${whole.value} is meant, a rate of up to ${percentText(high, 1)} (Wilson) is not excluded: please give the denominator and this limit.`;
  return { ...base, recomputed: { successes: 0, trials: whole.value, high: 100 * high }, because };
} // prettier-ignore

/** One past the event that "no" denies within three words, or 0. */
function eventAfter(tokens: LinkedSentence["reading"]["tokens"], at: number): number {
  for (let i = at + 1; i < at + 5; i++) {
    const token = tokens[i];
    if (token?.kind !== "word" || inferences.has(token.text)) return 0;
    if (events.test(token.text)) return i + 1;
  }
  return 0;
}
