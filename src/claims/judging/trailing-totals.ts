import type { SentenceReading } from "../reading/read-sentence.js";
import { isNested } from "./rest-sums.js";
import { type Numbered, type Total, valueOf } from "./total.js";

/** More parts than these would make any total by chance. */
const mostParts = 12;

/** "34 falls, 19 accidents and 21 others, 74 in all", "giving a total of 51": the number after is the sum of those before. */
export function trailingTotals(reading: SentenceReading, numbered: readonly Numbered[]): Total[] {
  // Limbs of both sides count twice.
  if (reading.tokens.some(({ text }) => text === "both")) return [];
  return numbered.flatMap((fact, i): Total[] => {
    const shares = shareTotal(reading, numbered.slice(0, i), fact);
    if (shares) return [shares];
    if (fact.kind === "count" || !isTotal(reading, fact)) return [];
    const parts = numbered.slice(0, i).filter((part) => !isNested(reading, part));
    if (parts.length < 2 || parts.length > mostParts || parts.some(({ kind }) => kind === "count")) return [];
    const values = parts.map(valueOf);
    const whole = valueOf(fact);
    const sum = values.reduce((a, b) => a + b, 0);
    const base = { from: parts[0]!.from, to: fact.to, whole, parts: values };
    const text = `${values.join(" + ")} = ${sum}`;
    if (sum === whole) return [{ ...base, light: "holds", because: `${text}.`, reproducedBy: ["sum of the parts"] }];
    // Some of the numbers may be totals of the others themselves.
    if (anySum(values, whole)) return [];
    return [{ ...base, light: "fails", because: `${text}, not ${whole}. Which number is right?`, reproducedBy: [] }];
  });
} // prettier-ignore

/** "9 (18%), 6 (12%) and 2 (4%); altogether 17 of 150 (11%)": only the parts with a percentage are added. */
function shareTotal(reading: SentenceReading, before: readonly Numbered[], fact: Numbered): Total | null {
  const announced = ["overall", "altogether", "total", "all"].includes(reading.tokens[fact.from - 1]?.text ?? "");
  if (!announced || !hasShare(reading, fact)) return null;
  const parts = before.filter((part) => hasShare(reading, part) && !isNested(reading, part));
  const values = parts.map(valueOf);
  const whole = valueOf(fact);
  if (parts.length < 2 || parts.length > mostParts) return null;
  const sum = values.reduce((a, b) => a + b, 0);
  const base = { from: parts[0]!.from, to: fact.to, whole, parts: values };
  const text = `${values.join(" + ")} = ${sum}`;
  if (sum === whole) return { ...base, light: "holds", because: `${text}.`, reproducedBy: ["sum of the parts"] };
  // With no whole between them, several counts of one cohort may overlap.
  const sameWhole = parts.every(({ kind }) => kind === "count") && new Set(parts.map((part) => part.kind === "count" && part.trials)).size === 1; // prettier-ignore
  if (sameWhole || anySum(values, whole)) return null;
  return { ...base, light: "fails", because: `${text}, not ${whole}. Which number is right?`, reproducedBy: [] };
}

const hasShare = ({ facts, tokens }: SentenceReading, { to }: Numbered): boolean =>
  facts.some(({ kind, from }) => kind === "percent" && from === to + 1 && ["(", "["].includes(tokens[to]?.text ?? ""));

/** Announced before ("giving", "making", "a total of") or after ("in all", "altogether"). */
function isTotal({ tokens }: SentenceReading, { from, to }: Numbered): boolean {
  const text = (i: number): string => tokens[i]?.text ?? "";
  const start = text(from - 1) === "the" ? from - 1 : from;
  if (["making", "totalling", "totaling"].includes(text(start - 1))) return true;
  if (text(start - 1) === "giving") return !["rate", "mean"].includes(text(to));
  if (text(from - 1) === "of" && text(from - 2) === "total") return from > 6 && ["giving", "for", "making", ",", "to", "("].some((word) => [text(from - 3), text(from - 4)].includes(word)); // prettier-ignore
  const after = text(to + 1) === "in" || text(to + 1) === "altogether" ? to + 1 : to;
  return text(after) === "altogether" || (text(after) === "in" && ["all", "total"].includes(text(after + 1)) && [".", "", ")", ",", ";"].includes(text(after + 2))); // prettier-ignore
}

function anySum(values: readonly number[], whole: number): boolean {
  for (let mask = 1; mask < 2 ** values.length; mask++) {
    const chosen = values.filter((_, j) => (mask >> j) % 2 === 1);
    if (chosen.length >= 2 && chosen.reduce((a, b) => a + b, 0) === whole) return true;
  }
  return false;
}
