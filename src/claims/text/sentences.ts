import type { Block } from "./blocks.js";
import { tokensOf } from "./tokens.js";
import type { Token } from "./token.js";

/** The tokens of one sentence or table row. */
export interface Sentence {
  readonly tokens: readonly Token[];
  readonly row: boolean;
}

/** Longest run of tokens read together: it bounds the work on a text without full stops. */
const longest = 250;
const abbreviations = new Set(
  "vs v fig figs eg ie viz al approx no nos resp dr mr mrs ms prof ca cf etc incl excl est tab ref refs eq suppl avg".split(
    " ",
  ),
);
/** Shortened units: before a capital letter their full stop ends the sentence as well. */
const measures = new Set("yr yrs mo mos wk wks min max deg".split(" "));

/** Cuts a block into sentences: a full stop, question or exclamation mark followed by space and a capital, digit or bracket. */
export function sentencesOf(text: string, block: Block): Sentence[] {
  const tokens = tokensOf(text, block.start, block.end);
  const sentences: Sentence[] = [];
  let first = 0;
  for (let i = 0; i < tokens.length; i++)
    if (i + 1 === tokens.length || i - first >= longest || (!block.row && endsSentence(text, tokens, i))) {
      sentences.push({ tokens: tokens.slice(first, i + 1), row: block.row });
      first = i + 1;
    }
  return sentences;
}

function endsSentence(text: string, tokens: readonly Token[], i: number): boolean {
  const token = tokens[i]!;
  if (token.text === "?" || token.text === "!") return true;
  if (token.text !== ".") return false;
  const next = tokens[i + 1];
  if (!next?.spaced) return false;
  const before = tokens[i - 1];
  const code = text.charCodeAt(next.start);
  const capital = next.kind === "word" && !(code >= 97 && code <= 122);
  if (before?.kind === "word" && !token.spaced) {
    if (abbreviations.has(before.text)) return false;
    if (dotted(tokens, i)) return capital && !["i e", "e g"].includes(`${tokens[i - 3]!.text} ${before.text}`);
    if (initial(before, next)) return false;
    if (measures.has(before.text)) return capital;
  }
  return next.kind !== "word" || capital;
}

/** The last full stop of "i.e.", "n.s." or "C.I.". */
const dotted = (tokens: readonly Token[], i: number): boolean => {
  const [first, stop, second] = [tokens[i - 3], tokens[i - 2], tokens[i - 1]!];
  return first?.kind === "word" && first.text.length === 1 && stop?.text === "." && !stop.spaced && second.text.length === 1 && !second.spaced; // prettier-ignore
};

/** A single letter before the full stop, as in "C. I." or a name's initial; "p" and a closing grade such as "I." end sentences. */
const initial = (before: Token, next: Token): boolean =>
  before.text.length === 1 && before.text !== "i" && before.text !== "v" && next.kind === "word";
