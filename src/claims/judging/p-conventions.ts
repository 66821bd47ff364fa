import { chiSquareTwoGroups } from "../../stats/two-groups/chi-square-two-groups.js";
import { barnard } from "../../stats/two-groups/barnard.js";
import { boschloo } from "../../stats/two-groups/boschloo.js";
import { fisherExact } from "../../stats/two-groups/fisher-exact.js";
import type { TwoGroups } from "../../stats/two-groups/groups.js";
import { largeSampleTests } from "../../stats/reported/large-sample-tests.js";
import { remembered } from "./memory.js";

export const families = [
  "fisher",
  "mid-p",
  "fisher one-sided",
  "chi-square",
  "yates",
  "n-1",
  "unconditional",
  "wald",
  "likelihood",
] as const;
export type Family = (typeof families)[number];

/** One p value of a fourfold table, with the convention that gives it. */
export interface Convention {
  readonly name: string;
  readonly family: Family;
  readonly p: number;
}

const memory = remembered<readonly Convention[]>();
const mostForUnconditional = 300;

/** The p value of two independent groups under every convention in common use. */
export function conventions(groups: TwoGroups): readonly Convention[] {
  const { first, second } = groups;
  return memory(`${first.successes}/${first.trials}:${second.successes}/${second.trials}`, () => {
    const fisher = fisherExact(groups);
    const chi = chiSquareTwoGroups(groups);
    const large = largeSampleTests(groups);
    const found: Convention[] = [
      { name: "Fisher, summing the tables that are no likelier", family: "fisher", p: fisher.pointProbability },
      { name: "Fisher, doubling the smaller tail", family: "fisher", p: fisher.doubled },
      { name: "Fisher mid-p", family: "mid-p", p: fisher.midP },
      {
        name: "Fisher mid-p, doubling the smaller tail",
        family: "mid-p",
        p: Math.min(1, fisher.doubled - doubledHalf(fisher)),
      },
      { name: "one-sided Fisher", family: "fisher one-sided", p: Math.min(fisher.less, fisher.greater) },
    ];
    if ("pearson" in chi)
      found.push(
        { name: "chi-square without correction", family: "chi-square", p: chi.pearson.p },
        { name: "chi-square with Yates's correction", family: "yates", p: chi.yates.p },
        { name: "N − 1 chi-square", family: "n-1", p: chi.nMinus1.p },
      );
    if (large.difference !== null)
      found.push({ name: "Wald test of the difference", family: "wald", p: large.difference });
    if (large.logOddsRatio !== null)
      found.push({ name: "Wald test of the log odds ratio", family: "wald", p: large.logOddsRatio });
    if (large.likelihoodRatio !== null)
      found.push({ name: "likelihood ratio test", family: "likelihood", p: large.likelihoodRatio });
    return found;
  });
}

const memoryUnconditional = remembered<readonly Convention[]>();

/** Boschloo's and Barnard's tests, which cost milliseconds: asked only when no other convention fits. None for large groups. */
export function unconditionalConventions(groups: TwoGroups): readonly Convention[] {
  const { first, second } = groups;
  if (first.trials + second.trials > mostForUnconditional) return [];
  return memoryUnconditional(`${first.successes}/${first.trials}:${second.successes}/${second.trials}`, () => [
    { name: "Boschloo", family: "unconditional", p: boschloo(groups).p },
    {
      name: "Boschloo, ordered by Fisher's two-sided p",
      family: "unconditional",
      p: boschloo(groups, { convention: "pointProbability" }).p,
    },
    { name: "Barnard", family: "unconditional", p: barnard(groups).p },
  ]);
}

/** Probability of the observed table: what the two one-sided tails share. */
const doubledHalf = ({ less, greater }: { readonly less: number; readonly greater: number }): number =>
  Math.max(0, less + greater - 1);
