import type { Claim } from "../claim.js";
import type { CountFact } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";
import { phraseOf } from "./phrase-of.js";
import { repeatClaim } from "./repeat-claim.js";

interface Statement {
  readonly phrase: string;
  readonly count: CountFact;
  readonly start: number;
  readonly end: number;
}

/** A group or grade named in the sentence itself; without one, the paragraph around may speak of another group. */
const grouped = /\b(grades? (i{1,3}|iv|v|\d)|closed|open|wired|unwired|all|total)\b/;
/** Words that lean on what stands before. */
const leaning = /\b(other|another|remaining|latter|former|they|them|it|here|second|first|same|also|again|left|right|boys?|girls?|year|years|previous|earlier|study|series|et|al|reported)\b/; // prettier-ignore

/**
 * The same quantity printed twice, in abstract and body. It fails only where two paragraphs use the same words for it,
 * group and unit included, each of them once, and just one of the two numbers differs.
 */
export function judgeRepeats(text: string, sentences: readonly LinkedSentence[]): Claim[] {
  const byPhrase = new Map<string, Statement[]>();
  for (const sentence of sentences)
    for (const one of statements(sentence))
      byPhrase.set(one.phrase, [...(byPhrase.get(one.phrase) ?? []).slice(0, 2), one]);
  return [...byPhrase.values()].flatMap((said): Claim[] => {
    const [first, second] = said;
    // Said three times it may be a list of groups.
    if (!first || !second || said.length > 2 || !apart(text, first, second)) return [];
    const [a, b] = [first.count, second.count];
    if ((a.successes === b.successes) === (a.trials === b.trials)) return [];
    const because = `The same words give ${a.successes} of ${a.trials} before and ${b.successes} of ${b.trials} here. Which number is right?`;
    return [claimOf(text, first, second, because)];
  });
}

/** A sentence with one count and nothing else counted; its percentage and interval are its own. */
function statements(sentence: LinkedSentence): Statement[] {
  const [group] = sentence.proportions;
  const { reading } = sentence;
  if (reading.row || sentence.proportions.length !== 1 || !group?.count || group.count.unit === null) return [];
  const own = [group.percent, group.told, group.limit, ...group.intervals].filter((place) => place !== null);
  const phrase = phraseOf(sentence, group.count, own);
  if (phrase === null || !grouped.test(phrase) || leaning.test(phrase)) return [];
  const { from, to } = group.count;
  const place = { start: reading.tokens[from]!.start, end: reading.tokens[to - 1]!.end };
  return [{ phrase: `${phrase} | ${group.count.unit}`, count: group.count, ...place }];
}

/** In two paragraphs, with no short line (a heading such as "Boys") that could give them other groups. */
function apart(text: string, first: Statement, second: Statement): boolean {
  const opening = text
    .slice(Math.max(0, first.start - 2000), first.start)
    .split(/\n[ \t\r]*\n/)
    .at(-1)!;
  if (lead.test(opening)) return false;
  const between = text.slice(first.end, second.start);
  const paragraphs = between.split(/\n[ \t\r]*\n/);
  if (paragraphs.length < 2) return false;
  const headings = paragraphs.slice(1).flatMap((part) => part.split("\n").filter((line) => line.length < 60));
  return headings.every((line) => line.trim() === "" || line === paragraphs.at(-1)!.split("\n").at(-1) || known.test(line.trim())) &&
    !lead.test(paragraphs.at(-1)!); // prettier-ignore
}

/** Headings of a paper's parts; any other may name a group. */
const known = /^(abstract|summary|introduction|background|methods|patients and methods|results|discussion|conclusions?)[.:]?$/i; // prettier-ignore
/** A paragraph that opens on its own group. */
const lead =
  /\b(in|among|for|of) (the )?(boys|girls|[a-z]+ (group|series|cohort|centre|hospital|study))\b|sensitivity|et al|reported|previous|literature|subgroup|excluding|\bif\b/i;

const claimOf = (text: string, first: Statement, second: Statement, because: string): Claim => {
  const { successes, trials } = second.count;
  const printed = { successes: { value: successes, decimals: 0 }, trials: { value: trials, decimals: 0 } };
  return repeatClaim(text, second, printed, { successes: first.count.successes, trials: first.count.trials }, because);
};
