import { agrestiCaffo } from "../../stats/two-groups/agresti-caffo.js";
import { barnard } from "../../stats/two-groups/barnard.js";
import { boschloo } from "../../stats/two-groups/boschloo.js";
import { chiSquareTwoGroups } from "../../stats/two-groups/chi-square-two-groups.js";
import { conditionalOddsRatio } from "../../stats/two-groups/conditional-odds-ratio.js";
import { conventionNote } from "../../stats/two-groups/convention-note.js";
import { exactDifference, mostTrials as mostExactTrials } from "../../stats/two-groups/exact-difference.js";
import { fisherExact } from "../../stats/two-groups/fisher-exact.js";
import type { TwoGroups } from "../../stats/two-groups/groups.js";
import { katz } from "../../stats/two-groups/katz.js";
import { koopman } from "../../stats/two-groups/koopman.js";
import { miettinenNurminen } from "../../stats/two-groups/miettinen-nurminen.js";
import { newcombe } from "../../stats/two-groups/newcombe.js";
import { numberNeededToTreat } from "../../stats/two-groups/number-needed-to-treat.js";
import { mostTrials } from "../../stats/two-groups/unconditional-p.js";
import { woolf } from "../../stats/two-groups/woolf.js";
import type { NotEstimable } from "../../stats/types.js";

/**
 * What `denominator compare` prints.
 * @param options.exact adds the exact unconditional limits of the difference
 */
export function analyseComparison(groups: TwoGroups, level: number, options: { readonly exact?: boolean } = {}) {
  const difference = newcombe(groups, { level });
  const needed = numberNeededToTreat(groups, { level });
  const { because } = conventionNote(groups, { level });
  return {
    ...groups,
    level,
    difference: {
      estimate: difference.estimate,
      newcombe: difference.interval,
      miettinenNurminen: miettinenNurminen(groups, { level }).interval,
      agrestiCaffo: agrestiCaffo(groups, { level }).interval,
      ...(options.exact === true && { exact: exactLimits(groups, level) }),
    },
    riskRatio: riskRatio(groups, level),
    oddsRatio: oddsRatio(groups, level),
    fisher: fisher(groups),
    chiSquare: chiSquare(groups),
    unconditional: unconditional(groups),
    numberNeededToTreat: { estimate: needed.estimate, ranges: needed.ranges },
    notes: because === undefined ? [] : [`Fisher's p and the exact limits of the odds ratio disagree: ${because}`],
  };
}

export type ComparisonAnalysis = ReturnType<typeof analyseComparison>;

/** The estimate, or null with its reason beside it. */
function estimated(result: { readonly estimate: number } | NotEstimable): {
  estimate: number | null;
  because?: string;
} {
  return result.estimate === null ? { estimate: null, because: result.because } : { estimate: result.estimate };
}

function exactLimits(groups: TwoGroups, level: number) {
  if (groups.first.trials + groups.second.trials > mostExactTrials)
    return {
      chanZhang: null,
      agrestiMin: null,
      because: `the exact limits are computed for at most ${mostExactTrials} trials of both groups together`,
    };
  return {
    chanZhang: exactDifference(groups, { level, method: "chanZhang" }).interval,
    agrestiMin: exactDifference(groups, { level, method: "agrestiMin" }).interval,
  };
}

function riskRatio(groups: TwoGroups, level: number) {
  const score = koopman(groups, { level });
  return { ...estimated(score), katz: katz(groups, { level }).interval, koopman: score.interval };
}

function oddsRatio(groups: TwoGroups, level: number) {
  const sample = woolf(groups, { level });
  const exact = conditionalOddsRatio(groups, { level });
  const midP = conditionalOddsRatio(groups, { level, limits: "midP" });
  return {
    sample: sample.estimate,
    ...(sample.estimate === null ? { because: sample.because } : {}),
    woolf: sample.interval,
    conditional: { ...estimated(exact), exact: exact.interval, midP: midP.interval },
  };
}

function fisher(groups: TwoGroups) {
  const { pointProbability, logPointProbability, doubled, midP, less, greater } = fisherExact(groups);
  return { pointProbability, doubled, midP, less, greater, logPointProbability };
}

function chiSquare(groups: TwoGroups) {
  const result = chiSquareTwoGroups(groups);
  if ("because" in result) return { pearson: null, yates: null, nMinus1: null, because: result.because };
  return { pearson: result.pearson.p, yates: result.yates.p, nMinus1: result.nMinus1.p };
}

function unconditional(groups: TwoGroups) {
  if (groups.first.trials + groups.second.trials > mostTrials)
    return {
      boschloo: null,
      boschlooPointProbability: null,
      barnard: null,
      because: `the certified maximum is computed for at most ${mostTrials} trials of both groups together`,
    };
  return {
    boschloo: boschloo(groups).p,
    boschlooPointProbability: boschloo(groups, { convention: "pointProbability" }).p,
    barnard: barnard(groups).p,
  };
}
