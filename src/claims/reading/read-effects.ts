import type { EffectFact, Measure } from "./facts.js";
import type { PrintedNumber } from "../text/token.js";
import { type Cursor, numberAt, pointsEnd, quantityAt, take, textAt, wordsIn } from "./cursor.js";

/** Odds, risk and hazard ratios, differences, numbers needed to treat, with their labels. Takes their tokens. */
export function readEffects(cursor: Cursor): EffectFact[] {
  const facts: EffectFact[] = [];
  for (let i = 0; i < cursor.tokens.length; i++) {
    if (cursor.taken[i]) continue;
    const label = labelAt(cursor, i);
    const found = label ? afterLabel(cursor, i, label) : (timesAt(cursor, i) ?? unlabelled(cursor, i));
    if (!found) continue;
    take(cursor, found);
    facts.push(found);
  }
  return facts;
}

interface Label {
  readonly measure: Measure;
  readonly to: number;
}

const capitals: Record<string, Measure> = {
  or: "odds ratio", ors: "odds ratio", rr: "risk ratio", hr: "hazard ratio", rd: "difference", arr: "difference",
  nnt: "number needed to treat", nnh: "number needed to treat", md: "difference", icc: "coefficient", iccs: "coefficient",
  auc: "coefficient", auroc: "coefficient",
}; // prettier-ignore
const pairs: Record<string, Measure> = {
  "odds ratio": "odds ratio", "odds ratios": "odds ratio", "risk ratio": "risk ratio", "relative risk": "risk ratio",
  "rate ratio": "ratio", "hazard ratio": "hazard ratio", "hazards ratio": "hazard ratio", "risk difference": "difference",
  "risk reduction": "difference", "relative reduction": "relative reduction", "relative decrease": "relative reduction", "prevalence ratio": "risk ratio", "success ratio": "risk ratio", "intraclass correlation": "coefficient", "correlation coefficient": "coefficient",
  "krippendorff's alpha": "coefficient", "area under": "coefficient",
}; // prettier-ignore

function labelAt(cursor: Cursor, i: number): Label | null {
  const token = cursor.tokens[i]!;
  if (token.kind !== "word") return null;
  if ((token.capitals || token.text === "nnt" || token.text === "rr") && capitals[token.text])
    return { measure: capitals[token.text]!, to: i + 1 };
  if (token.text === "aor" || token.text === "ahr")
    return { measure: token.text === "aor" ? "odds ratio" : "hazard ratio", to: i + 1 };
  if (
    token.text === "rrr" ||
    (token.text === "relative" && textAt(cursor, i + 1) === "risk" && textAt(cursor, i + 2) === "reduction")
  )
    return { measure: "relative reduction", to: token.text === "rrr" ? i + 1 : i + 3 };
  const next = textAt(cursor, i + 1) === "-" ? textAt(cursor, i + 2) : textAt(cursor, i + 1);
  const pair = pairs[`${token.text} ${next}`] ?? pairs[token.text.replace("-", " ")];
  if (pair) return { measure: pair, to: pairs[token.text.replace("-", " ")] ? i + 1 : i + 2 };
  if (token.text === "number" && next === "needed") return { measure: "number needed to treat", to: i + 4 };
  if (token.text === "difference" || token.text === "differences") return { measure: "difference", to: i + 1 };
  return null;
}

/** "The odds were 3.4 times as high", "the risk of failure was 2.1 times higher". */
function timesAt(cursor: Cursor, i: number): EffectFact | null {
  const text = textAt(cursor, i);
  if ((text !== "odds" && text !== "risk") || textAt(cursor, i + 1) === "ratio") return null;
  for (let at = i + 1; at < i + 8; at++) {
    const token = cursor.tokens[at];
    if (!token || token.kind === "mark") return null;
    if (!token.number) continue;
    if (token.spelled || cursor.taken[at] || textAt(cursor, at + 1) !== "times") return null;
    const measure = text === "odds" ? "odds ratio" : "risk ratio";
    return { kind: "effect", from: i, to: at + 2, measure, number: { ...token.number, unit: null }, about: wordsIn(cursor, i, at) };
  }
  return null;
} // prettier-ignore

const before = new Set("p ci confidence κ kappa n sd range iqr respectively while whereas but".split(" "));

/** "A difference of up to 25 points remains possible": a bound, no estimate. */
const bounds = new Set(["up", "least", "most", "than", "within", "exceeding", "below", "above"]);

/** The number after a label, unless something else is named first. */
function afterLabel(cursor: Cursor, i: number, label: Label): EffectFact | null {
  // "odds ratio (OR) 12.75": the abbreviation's own bracket closes right behind it.
  const abbreviated = textAt(cursor, i - 1) === "(" && textAt(cursor, label.to) === ")";
  const open = (cursor.depth[i] ?? 0) - (abbreviated ? 1 : 0);
  for (let at = label.to; at < label.to + 14; at++) {
    const token = cursor.tokens[at];
    if (!token || cursor.taken[at] || before.has(token.text) || token.text === ";") return null;
    // "The difference was not significant (RR 0.80": the number is that of the nearer label.
    if ((labelAt(cursor, at)?.measure ?? label.measure) !== label.measure) return null;
    if (token.text === "<" || token.text === ">" || bounds.has(token.text)) return null;
    if ((cursor.depth[at] ?? 0) < open || token.text === "\t") return null;
    const read = token.number ? quantityAt(cursor, at) : null;
    if (!read) continue;
    const next = textAt(cursor, read.to);
    // "the difference between 34 of 38 and 9 of 15": a count, not the difference.
    if (token.spelled || next === "/" || next === "of" || next === "out") return null;
    if (label.measure !== "difference" && label.measure !== "relative reduction" && read.quantity.unit === "percent")
      return null;
    if (isLoose(label, cursor, i) && read.quantity.unit === null && read.quantity.decimals === 0 && at > label.to + 2)
      return null;
    const about = [...wordsIn(cursor, i - 4, i), ...wordsIn(cursor, label.to, at)];
    const se = standardError(cursor, read.to);
    return {
      kind: "effect",
      from: i,
      to: read.to,
      measure: label.measure,
      number: read.quantity,
      about,
      ...(se ? { se } : {}),
    };
  }
  return null;
}

/** The bare word "difference" needs a number close by or one with a unit. */
const isLoose = (label: Label, cursor: Cursor, i: number): boolean =>
  label.measure === "difference" && textAt(cursor, i).startsWith("difference");

/** "3.2 mm (SE 0.8; ...": a standard error that opens the bracket behind. */
function standardError(cursor: Cursor, at: number): PrintedNumber | null {
  const named = textAt(cursor, at) === "(" && ["se", "sem"].includes(textAt(cursor, at + 1));
  const from = textAt(cursor, at + 2) === "=" ? at + 3 : at + 2;
  const number = named ? numberAt(cursor, from) : null;
  if (number) take(cursor, { from, to: from + 1 });
  return number;
}

const changes =
  /^(improv|increas|ris|rose|fell|fall|decreas|reduc|declin|drop|gain|differ|shorten|lengthen|lower|rais|exceed|grew|chang)/;

/** "improved by 4°", "differed by 3.2 mm". */
const changedBy = (cursor: Cursor, i: number): boolean =>
  textAt(cursor, i - 1) === "by" && wordsIn(cursor, i - 5, i - 1).some((word) => changes.test(word));

const comparatives = new Set(
  "better worse higher lower more less greater smaller longer shorter larger fewer earlier later older younger steeper in".split(
    " ",
  ),
);

/** "29 percentage points higher", "12° better": a difference told by its unit and a comparative. */
function unlabelled(cursor: Cursor, i: number): EffectFact | null {
  const token = cursor.tokens[i]!;
  if (!token.number || token.spelled) return null;
  if (bounds.has(textAt(cursor, i - 1)) || (textAt(cursor, i - 1) === "to" && textAt(cursor, i - 2) === "up"))
    return null;
  const points = pointsEnd(cursor, i + 1);
  const read = quantityAt(cursor, i)!;
  const comparative = comparatives.has(textAt(cursor, read.to)) && textAt(cursor, read.to) !== "in";
  const told = read.quantity.unit === "other" && (comparative || changedBy(cursor, i));
  if (points === i + 1 && !told) return null;
  const number = points > i + 1 ? { ...token.number, unit: "points" as const } : read.quantity;
  const to = points > i + 1 ? points : read.to;
  const se = standardError(cursor, to);
  const about = wordsIn(cursor, to, to + 4);
  return { kind: "effect", from: i, to, measure: "difference", number, about, ...(se ? { se } : {}) };
}
