import type { Token } from "../text/token.js";

export const overClaims = [
  "absolute",
  "safety",
  "equality",
  "superiority",
  "trend",
  "significant",
  "not significant",
  "cause",
] as const;
export type OverClaim = (typeof overClaims)[number];

/** A phrase that draws a conclusion, with its place. */
export interface Conclusion {
  readonly type: OverClaim;
  readonly phrase: string;
  readonly from: number;
  readonly to: number;
}

const phrases: readonly (readonly [OverClaim, string])[] = [
  ...list("absolute", [
    "no longer needed", "no longer necessary", "no longer required", "no longer indicated", "no longer justified", "no longer have a place",
    "no longer has a place", "never needed", "never necessary", "never required", "never fails", "never fail", "cannot fail", "always succeeds",
    "always successful", "always works", "always heal", "always heals", "always unites", "always reduces", "always restores", "always holds", "always succeed", "always possible",  "without exception", "100 % effective", "100 % reliable", "completely reliable", "entirely reliable", "is unnecessary", "are unnecessary", "is obsolete", "are obsolete",
    "be abandoned", "be replaced", "should replace", "can replace", "is not needed", "is not necessary", "is not required", "are not needed",
    "guarantees", "guarantee", "guaranteed", "eliminates", "eliminated", "abolishes", "abolished", "proves", "proven", "infallible", "no role for", "no place for",
    "has no role", "will always", "will never", "makes open reduction unnecessary", "can be omitted", "may be omitted", "rules out", "ruled out", "does not cause", "do not cause", "in every child", "in every patient", "for every child", "for all children", "for all patients",
  ]),
  ...list("safety", [
    "is safe", "are safe", "was safe", "be safe", "as safe", "proved safe", "safe and", "completely safe", "entirely safe", "perfectly safe", "therefore safe", "thus safe", "hence safe", "considered safe", "safe technique",
    "safe method", "safe procedure", "safe treatment", "safe option", "safe alternative", "safe operation", "risk-free", "risk free", "without risk",
    "without any risk", "no risk", "zero risk", "carries no", "harmless", "free of complications", "free from complications", "complication-free", "does not occur", "do not occur", "cannot occur", "never occurs", "never occur", "the safety of",
  ]),
  ...list("equality", [
    "no difference between", "no difference in", "was no difference", "is no difference", "were no differences", "are no differences", "equally effective", "equally good", "equally safe", "equally successful",
    "equal results", "equivalent", "equivalence", "as effective as", "as good as", "as successful as", "identical results", "the same success", "did not differ", "do not differ", "does not differ", "not inferior",
    "makes no difference", "made no difference", "work equally", "works equally", "had no effect", "has no effect", "no effect on", "are interchangeable",
  ]),
  ...list("superiority", ["superior", "superiority", "outperforms", "outperformed", "more effective than", "more effective", "better than", "clearly better", "is better", "safer than", "should be preferred", "is preferable", "treatment of choice", "should be used"]),
  ...list("trend", ["trend toward", "trend towards", "trend to", "trend in favour", "trend in favor", "trended", "approached significance", "borderline significant", "nearly significant", "almost significant", "marginally significant"]),
  ...list("cause", ["caused", "causes", "led to", "leads to", "resulted in", "results in", "prevents", "prevented", "reduces the", "reduced the risk", "reduced the rate", "improves the", "improved the", "improves", "lowers", "raises", "decreases the", "halves", "doubles", "protects", "is protective", "increases the", "because of the", "is due to", "was due to"]),
]; // prettier-ignore

function list(type: OverClaim, texts: readonly string[]): (readonly [OverClaim, string])[] {
  return texts.map((text) => [type, text] as const);
}

const byFirst = new Map<string, { readonly type: OverClaim; readonly words: readonly string[] }[]>();
for (const [type, text] of phrases) {
  const words = text.split(" ");
  byFirst.set(words[0]!, [...(byFirst.get(words[0]!) ?? []), { type, words }]);
}

const hedges = new Set(
  "not cannot no may might could whether if hypothesis hypothesised hypothesized hypothesize would aim aimed purpose question suggest suggests suggested suggesting appears appear appeared seems seem possible possibly perhaps unclear unknown unproven assess assessed determine evaluate test tested nor neither never uncertain should doubt against".split(
    " ",
  ),
);

/** Conclusions drawn in a sentence; hedged ones ("may be safe", "does not prove") are none. */
export function conclusionsIn(tokens: readonly Token[]): Conclusion[] {
  const found: Conclusion[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const significance = significanceAt(tokens, i);
    if (significance) found.push(significance);
    for (const { type, words } of byFirst.get(tokens[i]!.text) ?? []) {
      if (!words.every((word, j) => tokens[i + j]?.text === word)) continue;
      if (hedged(tokens, i) || (type === "equality" && qualified(tokens, i, i + words.length))) continue;
      // Told of the data, "did not differ" is a report; as what follows from them it is a claim.
      if (words[1] === "not" && words[2] === "differ" && !tokens.some(({ text }) => inferring.has(text))) continue;
      if (type === "trend" && tokens[i + words.length]?.text === "test") continue;
      if (found.some((other) => other.from <= i && other.to > i)) continue;
      found.push({ type, phrase: words.join(" "), from: i, to: i + words.length });
    }
  }
  return found;
}

const inferring = new Set(
  "conclude concluded conclusion therefore thus hence so consequently shows prove proves".split(" "),
);

/** A hedge within the clause before. */
function hedged(tokens: readonly Token[], at: number): boolean {
  let comma = false;
  for (let i = at - 1; i >= 0 && i >= at - 9; i--) {
    const { text } = tokens[i]!;
    comma ||= text === ",";
    // "Since no fracture occurred, the plate eliminates the risk": the no is another clause's.
    if (comma && ["no", "not", "nor", "neither", "never"].includes(text)) continue;
    if (
      text === ";" ||
      text === ":" ||
      text === ")" ||
      text === "so" ||
      text === "therefore" ||
      text === "thus" ||
      text === "hence"
    )
      return false;
    if (hedges.has(text)) return true;
  }
  return tokens.slice(0, at).some(({ text }) => text === "whether" || text === "aim" || text === "hypothesis");
}

const findingVerbs = new Set(
  "found seen detected observed demonstrated shown detectable evident apparent noted identified significantly statistically significant".split(
    " ",
  ),
);

/** "no difference was found" tells what was seen; "did not differ significantly" keeps to the test. */
function qualified(tokens: readonly Token[], from: number, to: number): boolean {
  const before = tokens
    .slice(Math.max(0, from - 5), from)
    .some(({ text }) => text === "we" || text === "statistically" || text === "found" || text === "showed");
  for (let i = to; i < to + 12; i++) {
    const text = tokens[i]?.text ?? "";
    if (findingVerbs.has(text)) return true;
    if ([";", ".", "so"].includes(text)) break;
  }
  return before;
}

const negations = new Set("not no non without nor neither never insignificant any".split(" "));

function significanceAt(tokens: readonly Token[], i: number): Conclusion | null {
  const { text } = tokens[i]!;
  if (
    text === "non-significant" ||
    text === "nonsignificant" ||
    text === "non-significantly" ||
    text === "insignificant"
  )
    return { type: "not significant", phrase: text, from: i, to: i + 1 };
  if (text !== "significant" && text !== "significantly") return null;
  const before = tokens.slice(Math.max(0, i - 6), i).map((token) => token.text);
  if (["almost", "nearly", "borderline", "marginally", "clinically"].includes(before.at(-1) ?? "")) return null;
  if (
    before.some((word) => ["level", "significance", "considered", "if", "whether"].includes(word)) ||
    ["at", "when"].includes(tokens[i + 1]?.text ?? "")
  )
    return null;
  const negative = before.some((word) => negations.has(word) || word.endsWith("n't"));
  return { type: negative ? "not significant" : "significant", phrase: text, from: i, to: i + 1 };
}
