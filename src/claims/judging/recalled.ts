import type { LinkedSentence, ProportionGroup } from "../reading/link.js";
import { numberedIn } from "./total.js";
import type { Story } from "./story.js";

const rates = new Set("rate proportion incidence frequency prevalence".split(" "));
const concluding = new Set("therefore thus hence accordingly consequently".split(" "));

/**
 * "Nine redislocated. The redislocation rate was therefore 12.5%": a rate without a count that speaks of the whole and
 * the part just named gets them.
 */
export function recalled(linked: LinkedSentence, story: Story): LinkedSentence {
  const { reading, proportions } = linked;
  const [whole, part] = story.latest;
  const [group] = proportions;
  const words = reading.tokens.map(({ text }) => text);
  const bare = proportions.length === 1 && group!.count === null && group!.percent?.trials === null && group!.intervals.length === 0; // prettier-ignore
  if (!bare || story.latest.length !== 2 || numberedIn(reading).length > 0) return linked;
  if (whole === undefined || part === undefined || part > whole || !words.some((word) => rates.has(word)))
    return linked;
  const sure = words.some((word) => concluding.has(word));
  if (!sure && !namedBefore(words, story.latestWords)) return linked;
  const { from, to } = group!.percent!;
  const count = { kind: "count", from, to, form: "of", successes: part, trials: whole, unit: null } as const;
  const known: ProportionGroup = { ...group!, count, sure, wholeFrom: sure ? "sentence" : "text" };
  return { ...linked, proportions: [known] };
}

/** The event before "rate" in another form: "redislocation" and "redislocated". */
function namedBefore(words: readonly string[], before: ReadonlySet<string>): boolean {
  const event = words[words.findIndex((word) => rates.has(word)) - 1] ?? "";
  return event.length >= 6 && [...before].some((word) => word.slice(0, 6) === event.slice(0, 6));
}
