import type { CountFact, PercentFact } from "./facts.js";
import { type Cursor, numberAt, quantityAt, take, textAt } from "./cursor.js";

const rates = new Set(
  "proportion proportions rate rates probability share fraction sensitivity specificity accuracy risk risks incidence prevalence ppv npv value".split(
    " ",
  ),
);

/** Shares printed as fractions beside their count: "0.85 (34/40)", "34 of 40 (0.85)", "a proportion of 0.85". Takes their tokens. */
export function readShares(cursor: Cursor, counts: readonly CountFact[]): PercentFact[] {
  const facts: PercentFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    const number = numberAt(cursor, i);
    if (!number || number.decimals < 1 || number.value < 0 || number.value > 1) continue;
    if (quantityAt(cursor, i)!.quantity.unit !== null) continue;
    const labelled = isLabelled(cursor, i);
    const near = counts.some((count) => followsIn(cursor, i, count) || precedes(cursor, i, count, labelled));
    if (!near || (!labelled && textAt(cursor, i - 1) === "=" && cursor.tokens[i - 2]?.kind === "word")) continue;
    const asPercent = {
      value: Number((100 * number.value).toPrecision(12)),
      decimals: Math.max(0, number.decimals - 2),
    };
    const fact: PercentFact = {
      kind: "percent", from: i, to: i + 1, number: { ...asPercent, unit: "percent" }, trials: null, unit: null, marked: labelled, fraction: number,
    }; // prettier-ignore
    take(cursor, fact);
    facts.push(fact);
  }
  return facts;
}

/** "a success rate of 0.85", "the proportion was 0.85". */
function isLabelled(cursor: Cursor, i: number): boolean {
  for (let at = i - 1; at >= i - 5 && at >= 0; at--) {
    if (rates.has(textAt(cursor, at))) return true;
    if (cursor.tokens[at]!.kind === "number" || textAt(cursor, at) === ";") return false;
  }
  return false;
}

/** The count opens the bracket right after. */
const followsIn = (cursor: Cursor, i: number, { from }: CountFact): boolean =>
  ["(", "["].includes(textAt(cursor, i + 1)) &&
  from >= i + 2 &&
  from <= i + 4 &&
  !cursor.tokens[i + 2]?.text.startsWith("p");

/** The share opens the bracket after the count and its noun, or follows "=", or a label of its own after a comma. */
function precedes(cursor: Cursor, i: number, { to }: CountFact, labelled: boolean): boolean {
  if (to > i || i - to > (labelled ? 10 : 7)) return false;
  for (let at = to; at < i - 1; at++) {
    const token = cursor.tokens[at]!;
    if (token.kind === "number" || (token.kind === "mark" && !(labelled && "(,:[".includes(token.text)))) return false;
  }
  return labelled || ["(", "[", "="].includes(textAt(cursor, i - 1));
}
