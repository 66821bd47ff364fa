import type { StatisticFact } from "./facts.js";
import { type Cursor, numberAt, take, textAt } from "./cursor.js";

const names: Record<string, StatisticFact["name"]> = {
  "χ2": "chi-square", "χ²": "chi-square", "χ": "chi-square", chi2: "chi-square", x2: "chi-square", "x²": "chi-square",
  "chi-square": "chi-square", "chi-squared": "chi-square", t: "t", z: "z",
}; // prettier-ignore

/** Test statistics: "χ² = 4.89, df = 1", "t(34) = 2.1", "z = 2.35". Takes their tokens. */
export function readStatistics(cursor: Cursor): StatisticFact[] {
  const facts: StatisticFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const name = cursor.taken[i] ? undefined : names[textAt(cursor, i)];
    const fact = name ? statisticAt(cursor, i, name) : null;
    if (!fact) continue;
    take(cursor, fact);
    facts.push(fact);
  }
  return facts;
}

function statisticAt(cursor: Cursor, i: number, name: StatisticFact["name"]): StatisticFact | null {
  let at = i + 1;
  if (textAt(cursor, i) === "χ" && cursor.tokens[at]?.number?.value === 2) at++;
  if (["test", "statistic", "value"].includes(textAt(cursor, at))) at++;
  let df: number | null = null;
  if (textAt(cursor, at) === "(") {
    df = firstNumber(cursor, at + 1, 4);
    while (at < i + 9 && textAt(cursor, at) !== ")") at++;
    at++;
  } else if (cursor.tokens[at]?.number && !cursor.tokens[at]!.spaced && textAt(cursor, at + 1) === "=") {
    df = cursor.tokens[at]!.number!.value;
    at++;
  }
  if (textAt(cursor, at) !== "=" && textAt(cursor, at) !== "was" && textAt(cursor, at) !== "of") return null;
  const number = numberAt(cursor, at + 1);
  if (!number) return null;
  const after = df === null ? degreesAfter(cursor, at + 2) : { df, to: at + 2 };
  return { kind: "statistic", from: i, to: after.to, name, number, df: after.df };
}

/** "df = 1", "1 df", "with 1 degree of freedom" after the statistic. */
function degreesAfter(cursor: Cursor, from: number): { df: number | null; to: number } {
  for (let at = from; at < from + 4; at++) {
    const text = textAt(cursor, at);
    if (text === "df" || text === "d.f") {
      const df = firstNumber(cursor, at + 1, 2);
      return df === null ? { df, to: from } : { df, to: at + 3 };
    }
    const next = textAt(cursor, at + 1);
    const df = cursor.tokens[at]?.number?.value;
    if (df !== undefined)
      return ["df", "degree", "degrees"].includes(next) ? { df, to: at + 2 } : { df: null, to: from };
  }
  return { df: null, to: from };
}

function firstNumber(cursor: Cursor, from: number, within: number): number | null {
  for (let at = from; at < from + within; at++) if (cursor.tokens[at]?.number) return cursor.tokens[at]!.number!.value;
  return null;
}
