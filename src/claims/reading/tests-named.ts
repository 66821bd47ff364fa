import type { Family } from "../judging/p-conventions.js";
import type { Token } from "../text/token.js";

/** What a stretch of text says about the test behind a p value. */
export interface NamedTests {
  readonly families: readonly Family[];
  readonly oneSided: boolean;
  readonly trend: boolean;
  /** A test that counts alone cannot reproduce, by name. */
  readonly other: string | null;
  /** "t" and the like: means compared. */
  readonly means: boolean;
}

const others: readonly (readonly [start: string, name: string])[] = [
  ["mcnemar", "McNemar's test"],
  ["log-rank", "the log-rank test"],
  ["logrank", "the log-rank test"],
  ["logistic", "logistic regression"],
  ["regression", "regression"],
  ["adjust", "an adjusted analysis"],
  ["multivaria", "a model with several variables"],
  ["mantel", "a stratified analysis"],
  ["cochran-mantel", "a stratified analysis"],
  ["stratified", "a stratified analysis"],
  ["cox", "Cox regression"],
  ["mann-whitney", "a rank test"],
  ["wilcoxon", "a rank test"],
  ["rank-sum", "a rank test"],
  ["rank", "a rank test"],
  ["kruskal", "a rank test"],
  ["anova", "analysis of variance"],
  ["permutation", "a permutation test"],
  ["bootstrap", "a bootstrap"],
  ["gee", "a model for clusters"],
  ["cluster", "a model for clusters"],
  ["mixed", "a mixed model"],
  ["interaction", "a test of interaction"],
  ["paired", "a paired test"],
  ["matched", "a matched analysis"],
  ["noninferiority", "a non-inferiority test"],
  ["non-inferiority", "a non-inferiority test"],
  ["bayes", "a Bayesian analysis"],
  ["correlation", "a correlation"],
  ["spearman", "a correlation"],
];

const chiWords = new Set(["chi-square", "chi-squared", "chi", "χ2", "χ²", "χ", "x2", "chi2"]);

/** Tests named in a run of tokens. */
export function testsNamed(tokens: readonly Token[]): NamedTests {
  const words = tokens.filter((token) => token.kind === "word").map((token) => token.text);
  const has = (...starts: string[]): boolean => words.some((word) => starts.some((start) => word.startsWith(start)));
  const families: Family[] = [];
  const midP = has("mid-p", "midp") || words.some((word, i) => word === "mid" && words[i + 1] === "p");
  const oneSided = has("one-sided", "one-tailed", "single-sided");
  if (midP) families.push("mid-p");
  if (has("fisher") && !midP) families.push(oneSided ? "fisher one-sided" : "fisher");
  const yates = has("yates", "continuity") && !has("without");
  const nMinus1 = has("n-1") || tokens.some((token, i) => isNMinusOne(tokens, i) && token.text === "n");
  const plain = has("uncorrected", "pearson") || (has("without") && has("yates", "continuity", "correction"));
  if (yates) families.push("yates");
  if (nMinus1) families.push("n-1");
  if (!yates && !nMinus1 && words.some((word) => chiWords.has(word)))
    families.push(...(plain ? (["chi-square"] as const) : (["chi-square", "yates", "n-1"] as const)));
  if (has("barnard", "boschloo")) families.push("unconditional");
  if (has("likelihood")) families.push("likelihood");
  const z = words.some((word, i) => word === "z-test" || (word === "z" && words[i + 1] === "test"));
  if (z || words.includes("wald")) families.push("wald", "chi-square");
  const other = others.find(([start]) => has(start))?.[1] ?? null;
  const trend = has("trend", "armitage", "linear-by-linear");
  const means =
    has("student", "t-test", "t-tests", "welch") ||
    words.some((word, i) => word === "t" && words[i + 1]?.startsWith("test"));
  return { families: [...new Set(families)], oneSided, trend, other, means };
}

function isNMinusOne(tokens: readonly Token[], i: number): boolean {
  const [dash, one] = [tokens[i + 1], tokens[i + 2]];
  if (tokens[i]!.text !== "n") return false;
  return (dash?.text === "-" && one?.number?.value === 1) || dash?.number?.value === -1;
}

/** The tokens of the innermost bracket around `at`, or null outside brackets. */
export function bracketAround(tokens: readonly Token[], depth: readonly number[], at: number): readonly Token[] | null {
  const here = depth[at] ?? 0;
  if (here === 0) return null;
  let from = at;
  while (from > 0 && depth[from - 1]! >= here) from--;
  let to = at;
  while (to < tokens.length - 1 && depth[to + 1]! >= here) to++;
  return tokens.slice(from, to + 1);
}
