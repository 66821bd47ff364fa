import {
  decimalText,
  levelText,
  pText,
  percentDecimals,
  percentRangeText,
  percentText,
  ratioRangeText,
  ratioText,
} from "../../report/number-text.js";
import type { Count, Interval } from "../../stats/types.js";
import type { ComparisonAnalysis } from "./analyse-comparison.js";

/** The comparison in sentences: the difference first, then p with its convention named, then the others beside it. */
export function comparisonText(analysis: ComparisonAnalysis): string {
  const { first, second } = analysis;
  return [
    `First group ${countText(first)}, second group ${countText(second)}.`,
    differenceText(analysis),
    ...exactText(analysis),
    fisherText(analysis),
    otherTestsText(analysis),
    riskRatioText(analysis),
    oddsRatioText(analysis),
    neededText(analysis),
    ...analysis.notes.map((note) => `${note}.`),
  ].join("\n");
}

function countText({ successes, trials }: Count): string {
  return `${successes} of ${trials} (${percentText(successes / trials, trials)})`;
}

function differenceText({ difference, level, first, second }: ComparisonAnalysis): string {
  const fewest = Math.min(first.trials, second.trials);
  const points = (limits: Interval): string => percentRangeText(limits, fewest);
  return (
    `Difference, first minus second: ${decimalText(100 * difference.estimate, percentDecimals(fewest))} percentage points ` +
    `(${levelText(level)} CI ${points(difference.newcombe)}, Newcombe; ` +
    `${points(difference.miettinenNurminen)}, Miettinen-Nurminen; ${points(difference.agrestiCaffo)}, Agresti-Caffo).`
  );
}

function exactText({ difference: { exact }, level, first, second }: ComparisonAnalysis): string[] {
  if (exact === undefined) return [];
  if (exact.chanZhang === null) return [`Exact limits of the difference: none, because ${exact.because}.`];
  const points = (limits: Interval): string => percentRangeText(limits, Math.min(first.trials, second.trials));
  return [
    `Exact unconditional limits of the difference: ${levelText(level)} CI ${points(exact.chanZhang)}, Chan-Zhang; ` +
      `${points(exact.agrestiMin)}, Agresti-Min.`,
  ];
}

function fisherText({ fisher }: ComparisonAnalysis): string {
  return (
    `Fisher's exact test, two-sided, summing the tables no likelier than the observed one: ${pText(fisher.pointProbability)}. ` +
    `Twice the smaller tail: ${pText(fisher.doubled)}; mid-p: ${pText(fisher.midP)}; ` +
    `one-sided: ${pText(fisher.less)} (less), ${pText(fisher.greater)} (greater).`
  );
}

function otherTestsText({ chiSquare, unconditional }: ComparisonAnalysis): string {
  const asymptotic =
    chiSquare.pearson === null
      ? `Chi-square: none, because ${chiSquare.because}.`
      : `Chi-square: ${pText(chiSquare.pearson)}; with Yates's correction ${pText(chiSquare.yates)}; ` +
        `times (N \u2212 1)/N ${pText(chiSquare.nMinus1)}.`;
  const exact =
    unconditional.boschloo === null
      ? `Unconditional tests: none, because ${unconditional.because}.`
      : `Unconditional exact tests: Boschloo ${pText(unconditional.boschloo)} ` +
        `(ordered by Fisher's two-sided p: ${pText(unconditional.boschlooPointProbability)}); Barnard ${pText(unconditional.barnard)}.`;
  return `${asymptotic} ${exact}`;
}

function riskRatioText({ riskRatio, level }: ComparisonAnalysis): string {
  const { estimate, because, koopman, katz } = riskRatio;
  const value = estimate === null ? `undefined, because ${because}` : ratioText(estimate);
  const log = katz.low === null ? `no Katz limits, because ${katz.because}` : `${ratioRangeText(katz)}, Katz`;
  return `Risk ratio: ${value} (${levelText(level)} CI ${ratioRangeText(koopman)}, Koopman; ${log}).`;
}

function oddsRatioText({ oddsRatio, level }: ComparisonAnalysis): string {
  const { sample, because, woolf, conditional } = oddsRatio;
  const value = sample === null ? `undefined, because ${because}` : ratioText(sample);
  const log =
    woolf.low === null
      ? `no Woolf limits, because ${woolf.because}`
      : `${levelText(level)} CI ${ratioRangeText(woolf)}, Woolf`;
  const given =
    conditional.estimate === null ? `undefined, because ${conditional.because}` : ratioText(conditional.estimate);
  return (
    `Odds ratio: ${value} (${log}). Given both margins: ${given} ` +
    `(exact ${levelText(level)} CI ${ratioRangeText(conditional.exact)}; mid-p ${ratioRangeText(conditional.midP)}).`
  );
}

function neededText({ numberNeededToTreat: { estimate, ranges } }: ComparisonAnalysis): string {
  const number = (value: number): string => decimalText(Math.abs(value), 1);
  const kind = (value: number): string => (value > 0 ? "more" : "fewer");
  const lead =
    estimate === Infinity
      ? "Number needed to treat: infinity, the groups do not differ"
      : `Number needed to treat: ${number(estimate)} for one success ${kind(estimate)} in the first group`;
  if (ranges.length === 2)
    return `${lead}; the difference may be 0, so the data allow ${number(ranges[1]!.low)} or more for one success more and ${number(ranges[0]!.high)} or more for one success fewer.`;
  const [{ low, high }] = ranges as [Interval];
  const [small, large] = [low, high].map(Math.abs).toSorted((a, b) => a - b) as [number, number];
  return `${lead} (${number(small)} to ${large === Infinity ? "no upper limit" : number(large)}).`;
}
