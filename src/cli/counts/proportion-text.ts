import { decimalText, levelText, percentRangeText, percentText } from "../../report/number-text.js";
import type { ProportionAnalysis } from "./analyse-proportion.js";

/** One count in sentences: the one to print in a paper first, then the other methods, then what was not seen. */
export function proportionText(analysis: ProportionAnalysis): string {
  const { successes, trials, estimate, level, intervals } = analysis;
  return [
    `${successes} of ${trials} (${percentText(estimate, trials)}; ${levelText(level)} CI ` +
      `${percentRangeText(intervals.wilson, trials)}; Wilson score interval).`,
    "",
    `By other methods, ${levelText(level)} CI in per cent:`,
    ...otherMethods(analysis),
    "",
    oneSidedText(analysis),
    ...(analysis.next === undefined ? [] : [nextText(analysis)]),
  ].join("\n");
}

const names: readonly (readonly [keyof ProportionAnalysis["intervals"], string])[] = [
  ["wilsonContinuity", "Wilson with continuity correction"],
  ["clopperPearson", "exact (Clopper-Pearson)"],
  ["midP", "exact, mid-p"],
  ["blaker", "exact (Blaker)"],
  ["jeffreys", "Jeffreys"],
  ["agrestiCoull", "Agresti-Coull"],
  ["likelihoodRatio", "likelihood ratio"],
  ["wald", "Wald (poor near 0 and 100%; to recognise a printed one)"],
  ["waldContinuity", "Wald with continuity correction (likewise)"],
];

function otherMethods({ intervals, trials }: ProportionAnalysis): string[] {
  return names.map(([method, name]) => `  ${percentRangeText(intervals[method], trials).padEnd(16)}${name}`);
}

/** Bounds for one direction only, the one that matters first: none seen asks how many there may be. */
function oneSidedText({ oneSided: { lower, upper }, level, trials }: ProportionAnalysis): string {
  const sure = `${levelText(level)} confidence, exact`;
  const [least, most] = [percentText(lower, trials), percentText(upper, trials)];
  if (lower === 0) return `One-sided: at most ${most} (${sure}).`;
  if (upper === 1) return `One-sided: at least ${least} (${sure}).`;
  return `One-sided: at least ${least}, or at most ${most} (each alone with ${sure}).`;
}

function nextText({ next, level }: ProportionAnalysis): string {
  const { cases, estimate, interval } = next!;
  return (
    `Of the next ${cases} like them, ${decimalText(estimate, 1)} successes are expected, ${interval.low} to ${interval.high} ` +
    `with ${levelText(level)} probability (beta-binomial, Jeffreys prior).`
  );
}
