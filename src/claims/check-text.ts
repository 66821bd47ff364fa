import type { Claim } from "./claim.js";
import { judgeSentence } from "./judging/judge-sentence.js";
import { continued, storyOf } from "./judging/story.js";
import { leavesWholesOut } from "./judging/uncertain-wholes.js";
import { cohortsOf } from "./judging/units-of-text.js";
import { ladderOf, type LadderStep } from "./ladder.js";
import { readText } from "./read-text.js";
import { judgeDefiniteWholes } from "./repeats/judge-definite-wholes.js";
import { judgeRecalledShares } from "./repeats/judge-recalled-shares.js";
import { judgeRepeats } from "./repeats/judge-repeats.js";
import { type StyleHint, styleHints } from "./style/style-hints.js";
import { judgeTables } from "./tables/judge-tables.js";
import type { Count } from "../stats/types.js";
import type { Span } from "./text/token.js";

/** A checked text: every claim with its verdicts, the ladder of denominators, and what was not understood. */
export interface CheckedText {
  readonly claims: readonly Claim[];
  readonly denominators: readonly LadderStep[];
  readonly notUnderstood: readonly (Span & { readonly because: string })[];
  /** Remarks on wording, when asked for; they touch no verdict. */
  readonly styleHints?: readonly StyleHint[];
}

/** Counts of the text before that a conclusion may rest on. */
const mostEarlier = 200;

/**
 * Reads the numbers of a pasted text and judges which follow from which: arithmetic, unit and conclusion apart.
 * @param text plain text, or a table pasted with tabs or as HTML; never run or shown as markup
 * @param options.style adds remarks on wording (causal verbs, "trend", "significant" without an interval); default false
 * @throws TypeError when `text` is not a string
 * @throws RangeError when it holds no printed character
 * @example checkText("Closed reduction held in 31 of 37 fractures (86%).").claims[0].arithmetic // => "fails"
 */
export function checkText(text: string, options: { readonly style?: boolean } = {}): CheckedText {
  if (typeof text !== "string") throw new TypeError(`checkText: text must be a string, got ${typeof text}`);
  if (text.trim() === "") throw new RangeError("checkText: the text is empty");
  const reading = readText(text);
  const cohorts = cohortsOf(reading.sentences);
  const uncertain = leavesWholesOut(reading.sentences);
  const claims: Claim[] = [];
  const earlier: Count[] = [];
  let story = storyOf(reading.sentences);
  let pair: readonly Count[] = [];
  for (const linked of reading.sentences) {
    claims.push(...judgeSentence(text, linked, { ...reading, cohorts, earlier, story, pair, uncertain }));
    story = continued(story, linked);
    const counts = linked.proportions.flatMap(({ count }) => (count && count.successes <= count.trials ? [count] : []));
    if (counts.length > 0) pair = counts.length === 2 ? counts : [];
    earlier.push(...counts.map(({ successes, trials }) => ({ successes, trials })));
    if (earlier.length > mostEarlier) earlier.splice(0, earlier.length - mostEarlier);
  }
  const tabled = judgeTables(text);
  // A table cell is judged once, with its column: the row alone does not show the whole.
  const cells = tabled.filter(({ kind }) => kind === "percentage");
  const kept = claims.filter(
    ({ kind, start, end }) => kind !== "percentage" || !cells.some((cell) => cell.start < end && start < cell.end),
  );
  return {
    claims: [
      ...kept,
      ...tabled,
      ...judgeRepeats(text, reading.sentences),
      ...judgeDefiniteWholes(text, reading.sentences),
      ...judgeRecalledShares(text, reading.sentences),
    ].toSorted((a, b) => a.start - b.start),
    denominators: ladderOf(text, reading.sentences),
    notUnderstood: reading.notUnderstood,
    ...(options.style ? { styleHints: styleHints(text, reading.sentences) } : {}),
  };
}
