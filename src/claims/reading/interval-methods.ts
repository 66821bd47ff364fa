import { type Cursor, textAt } from "./cursor.js";

/** Methods that a text names beside an interval of one proportion. */
export const intervalMethods = ["Wilson", "exact", "mid-p", "Jeffreys", "Agresti–Coull", "Wald"] as const;
export type IntervalMethod = (typeof intervalMethods)[number];

const words: Record<string, IntervalMethod> = {
  wilson: "Wilson", "wilson's": "Wilson", "wilson-score": "Wilson", exact: "exact", clopper: "exact", "clopper-pearson": "exact",
  "mid-p": "mid-p", midp: "mid-p", jeffreys: "Jeffreys", "jeffreys'": "Jeffreys", agresti: "Agresti–Coull",
  "agresti-coull": "Agresti–Coull", wald: "Wald",
}; // prettier-ignore

/** The one method named from a little before the label to a little behind the limits; null when none is, or several are. */
export function intervalMethod(cursor: Cursor, label: number, end: number): IntervalMethod | null {
  const named = new Set<IntervalMethod>();
  for (let i = Math.max(0, label - 2); i < end + 4; i++) {
    const text = textAt(cursor, i);
    if (i >= end && (text === ";" || (text === ")" && i > end + 1))) break;
    if (words[text] && !(text === "exact" && ofTest(cursor, i))) named.add(words[text]);
  }
  return named.size === 1 ? [...named][0]! : null;
}

/** "Fisher's exact test". */
const ofTest = (cursor: Cursor, i: number): boolean =>
  textAt(cursor, i - 1).startsWith("fisher") || ["test", "tests", "p"].includes(textAt(cursor, i + 1));
