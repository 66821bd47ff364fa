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
  "vs v fig figs eg ie al approx no nos resp dr mr mrs ms prof ca cf etc incl est tab ref refs yr yrs mo mos wk wks e.g i.e c.i n.s s.d".split(
    " ",
  ),
);

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
  if (before?.kind === "word" && !token.spaced && (abbreviations.has(before.text) || initial(before, next)))
    return false;
  const code = text.charCodeAt(next.start);
  const lower = next.kind === "word" && code >= 97 && code <= 122;
  return !lower;
}

/** A single letter before the full stop, as in "C. I." or a name's initial; "p" and a closing grade such as "I." end sentences. */
const initial = (before: Token, next: Token): boolean =>
  before.text.length === 1 && before.text !== "i" && before.text !== "v" && next.kind === "word";
