import type { KappaFact } from "./facts.js";
import { type Cursor, numberAt, take, textAt, wordsIn } from "./cursor.js";

const names = new Set(["κ", "kappa", "kappas", "κw", "κs"]);

/** Kappa values with the weights named near them: "unweighted Cohen's κ = 0.71". Takes their tokens. */
export function readKappas(cursor: Cursor): KappaFact[] {
  const facts: KappaFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (cursor.taken[i] || !names.has(textAt(cursor, i))) continue;
    const fact = kappaAt(cursor, i);
    if (!fact) continue;
    take(cursor, fact);
    facts.push(fact);
    for (let next = furtherKappa(cursor, facts.at(-1)!); next; next = furtherKappa(cursor, next)) {
      take(cursor, next);
      facts.push(next);
    }
  }
  return facts;
}

/** "rose from 0.48 (95% CI ...) to 0.69 (95% CI ...)": a second value with its own interval behind the first one's. */
function furtherKappa(cursor: Cursor, first: KappaFact): KappaFact | null {
  const open = cursor.depth[first.from] ?? 0;
  if (textAt(cursor, first.to) !== "(") return null;
  let at = first.to;
  while (at < first.to + 16 && at < cursor.tokens.length && (cursor.depth[at] ?? 0) > open) at++;
  const number = ["to", "and", "v", "versus", ","].includes(textAt(cursor, at)) ? numberAt(cursor, at + 1) : null;
  const interval = textAt(cursor, at + 2) === "(" && cursor.taken[at + 3];
  if (!number || !interval || number.decimals === 0 || Math.abs(number.value) > 1) return null;
  return { ...first, from: at + 1, to: at + 2, number };
}

function kappaAt(cursor: Cursor, i: number): KappaFact | null {
  for (let at = i + 1; at < i + 16; at++) {
    const token = cursor.tokens[at];
    if (!token || names.has(token.text) || token.text === "p") return null;
    const number = numberAt(cursor, at);
    if (!number || token.spelled) continue;
    if (number.decimals === 0 && ![0, 1].includes(Math.abs(number.value))) continue;
    if (textAt(cursor, at + 1) === "%") return null;
    let from = i;
    while (from > 0 && i - from < 5 && cursor.tokens[from - 1]!.kind === "word") from--;
    const words = [...wordsIn(cursor, from, at), ...bracketAfter(cursor, at + 1)];
    const several = words.some((word) => word.startsWith("fleiss") || word === "pooled" || word === "average");
    return {
      kind: "kappa",
      from: i,
      to: at + 1,
      number,
      weights: weightsIn(words, textAt(cursor, i) === "κw"),
      several,
    };
  }
  return null;
}

/** "κ = 0.68 (linear weights)". */
function bracketAfter(cursor: Cursor, at: number): string[] {
  if (textAt(cursor, at) !== "(" && textAt(cursor, at) !== ",") return [];
  return wordsIn(cursor, at, at + 4).filter((word) => /^(un)?weight|^linear|^quadratic/.test(word));
}

function weightsIn(words: readonly string[], subscript: boolean): KappaFact["weights"] {
  if (words.includes("unweighted") || words.includes("non-weighted")) return "unweighted";
  if (words.some((word) => word.startsWith("linear"))) return "linear";
  if (words.some((word) => word.startsWith("quadratic"))) return "quadratic";
  if (subscript || words.some((word) => word.startsWith("weight"))) return "weighted";
  return words.some((word) => word.startsWith("cohen") || word.startsWith("simple")) ? "unweighted" : null;
}
