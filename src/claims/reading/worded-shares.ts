import type { CountFact } from "./facts.js";
import type { SentenceReading } from "./read-sentence.js";

/** A share told in words, with the count that stands in a bracket behind it. */
export interface WordedShare {
  readonly from: number;
  readonly to: number;
  readonly words: string;
  readonly share: number;
  /** "about", "nearly": the words claim less. */
  readonly loose: boolean;
  readonly count: CountFact;
}

const parts: Record<string, number> = { half: 2, third: 3, quarter: 4, fifth: 5, sixth: 6, tenth: 10 };
const numbers: Record<string, number> = { a: 1, one: 1, two: 2, three: 3, four: 4 };
const hedges = new Set(
  "about approximately around roughly nearly almost over under than more less some just half-".split(" "),
);

/** "a third of the cohort (19 of 42)", "two-thirds (22/45)", "nine in ten (36 of 40)". */
export function wordedShares({ tokens, facts }: SentenceReading): WordedShare[] {
  return tokens.flatMap((token, i): WordedShare[] => {
    if (token.kind === "mark" || (token.kind === "number" && !token.spelled)) return [];
    const told = fractionAt(tokens, i) ?? inMany(tokens, i);
    if (!told) return [];
    const open = tokens.findIndex(({ text }, at) => at >= told.to && (text === "(" || text === "["));
    if (open < 0 || open > told.to + 7 || tokens.slice(told.to, open).some(({ kind, text }) => kind !== "word" || text === "and"))
      return [];
    const count = facts.find((fact) => fact.kind === "count" && fact.from === open + 1);
    if (count?.kind !== "count") return [];
    const loose = tokens.slice(Math.max(0, i - 3), i).some(({ text }) => hedges.has(text));
    const words = tokens.slice(i, told.to).map(({ text }) => text).join(" ");
    return [{ from: i, to: count.to, words, share: told.share, loose, count }];
  });
} // prettier-ignore

type Tokens = SentenceReading["tokens"];

/** "a third", "two-thirds", "two thirds", "half", "three quarters". */
function fractionAt(tokens: Tokens, i: number): { share: number; to: number } | null {
  const text = tokens[i]!.text.toLowerCase();
  const [head, tail] = text.split("-");
  const joined = tail === undefined ? undefined : share(numbers[head!] ?? 0, tail);
  if (joined) return { share: joined, to: i + 1 };
  if (text === "half") return { share: 0.5, to: i + 1 };
  const two = share(tokens[i]!.spelled ? tokens[i]!.number!.value : (numbers[text] ?? 0), tokens[i + 1]?.text ?? "");
  return two ? { share: two, to: i + 2 } : null;
}

function share(many: number, part: string): number | null {
  const of = parts[part.endsWith("s") ? part.slice(0, -1) : part];
  return of !== undefined && many > 0 && many < of ? many / of : null;
}

/** "nine in ten", "two out of three", both in words. */
function inMany(tokens: Tokens, i: number): { share: number; to: number } | null {
  const at = tokens[i + 1]?.text === "out" && tokens[i + 2]?.text === "of" ? i + 3 : tokens[i + 1]?.text === "in" ? i + 2 : -1;
  const [many, of] = [tokens[i], tokens[at]];
  if (at < 0 || !many?.spelled || !of?.spelled || of.number!.value > 10 || many.number!.value >= of.number!.value) return null;
  return { share: many.number!.value / of.number!.value, to: at + 1 };
} // prettier-ignore
