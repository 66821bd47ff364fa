import type { Count } from "../../stats/types.js";
import type { PFact } from "../reading/facts.js";
import type { LinkedSentence } from "../reading/link.js";
import type { NamedTests } from "../reading/tests-named.js";
import type { ClaimKind } from "../claim.js";
import { type Finding, together } from "./finding.js";
import { judgeContradiction } from "./judge-contradiction.js";
import { impossibleP, judgeManyGroups, judgeTwoGroups } from "./judge-p.js";
import type { Judged } from "./judge-proportion.js";
import { judgeStatistic, judgeTwoMeans } from "./judge-two-means.js";
import { scopeOf, testsFor } from "./scope.js";

/** Judges one p value by whatever the sentence gives: counts, an effect with its interval, means, a test statistic. */
export function judgePClaim(
  linked: LinkedSentence,
  p: PFact,
  methods: NamedTests | null,
  earlier: readonly Count[],
): Judged {
  const recomputed: Record<string, number | null> = {};
  const { kind, findings } = checks(linked, p, testsFor(linked, p, methods), earlier, recomputed);
  return { kind, printed: p.number ? { p: p.number } : {}, recomputed, ...together(findings) };
}

function checks(
  linked: LinkedSentence, p: PFact, tests: NamedTests, earlier: readonly Count[], recomputed: Record<string, number | null>,
): { kind: ClaimKind; findings: Finding[] } {
  const hard = impossibleP(p);
  if (hard) return { kind: "p value", findings: [hard] };
  const scope = scopeOf(linked, p);
  const findings: Finding[] = [];
  const statistic = scope.statistic ? judgeStatistic(p, scope.statistic, recomputed) : null;
  if (statistic) findings.push(statistic);
  if (p.about.includes("interaction")) return { kind: "p value", findings: [...findings, unclear("A test of interaction cannot be recomputed from the counts.")] };
  const trend = tests.trend || p.about.includes("trend") || p.about.some((word) => word.endsWith("trend"));
  const referring = scope.counts.length === 0 && !scope.effect && scope.means.length === 0 && refersBack(linked);
  const counts = referring ? earlier : scope.counts;
  const interval = scope.effect?.interval ?? null;
  const effect = scope.effect?.estimate.kind === "effect" ? scope.effect.estimate : null;
  if (counts.length >= 2 && !(effect?.number.unit === "other")) {
    if (tests.other || scope.paired) findings.push(unclear(`${tests.other ?? "A paired comparison"} cannot be recomputed from the counts alone.`));
    else if (trend && groupsOnly(counts).length < 3) findings.push(unclear("A test for trend needs the counts of every grade."));
    else if (counts.length === 2) findings.push(judgeTwoGroups(p, counts as [Count, Count], tests, recomputed));
    else findings.push(softened(judgeManyGroups(p, counts, { ...tests, trend }, recomputed), trend || tests.families.length > 0));
    return { kind: "p value", findings };
  }
  if (effect && interval) return { kind: "p against interval", findings: [...findings, judgeContradiction(p, effect, interval, tests, recomputed)] };
  if (scope.means.length === 2) return { kind: "p value", findings: [...findings, judgeTwoMeans(p, scope.means as never, tests, recomputed)] };
  if (findings.length === 0) findings.push(unclear("The p value cannot be recomputed from what is printed: please give the counts, or means with standard deviations."));
  return { kind: statistic ? "test statistic" : "p value", findings };
} // prettier-ignore

const unclear = (because: string): Finding => ({
  light: "cannot be checked",
  because: because.slice(0, 1).toUpperCase() + because.slice(1),
  reproducedBy: [],
});

/** With several groups and no test named, another comparison may be meant. */
const softened = (finding: Finding, sure: boolean): Finding =>
  finding.light === "fails" && !sure ? { ...finding, light: "cannot be checked" } : finding;

/** Without an overall count that is larger than all the others together. */
const groupsOnly = (counts: readonly Count[]): readonly Count[] => {
  const all = counts.reduce((sum, { trials }) => sum + trials, 0);
  return counts.filter(({ trials }) => 2 * trials <= all);
};

const reference = new Set(["difference", "comparison", "differed", "significant", "significantly"]);
const refersBack = ({ reading }: LinkedSentence): boolean =>
  reading.tokens.slice(0, 8).some(({ text }) => reference.has(text));
