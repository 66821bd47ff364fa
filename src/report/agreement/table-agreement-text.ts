import { type TableFindings } from "../../findings/agreement/table-findings.js";
import { namedWeights } from "../../stats/agreement/disagreement-weights.js";
import { decimalText, listText, pText, percentText } from "../number-text.js";
import { coefficientText, rangeText, shareText } from "./coefficient-text.js";

/** One table of two raters in sentences. */
export function tableAgreementText(found: TableFindings): string {
  const { level } = found;
  return [
    `The two raters gave the same grade to ${shareText(found.agreement, level)}, and grades at most one apart to ${shareText(found.withinOne, level)}.`,
    ...namedWeights.map((weights) => kappaLine(found, weights)),
    ...permutationLines(found),
    `Agreement grade by grade (when one rater gave it, how often did the other too): ${listText(found.grades.map(gradeText))}.`,
    dependenceLine(found),
    "Kappa depends on how common the grades are: read it with the table and the agreement beside it.",
  ].join("\n");
}

function kappaLine(
  { kappa, bootstrap, maximum, level }: TableFindings,
  weights: (typeof namedWeights)[number],
): string {
  const result = kappa[weights];
  const name = weights === "unweighted" ? "Kappa, unweighted" : `Kappa, ${weights} weights`;
  if (result.estimate === null)
    return `${name}: ${coefficientText({ estimate: null, because: result.because }, level)}.`;
  const resampled = bootstrap[weights];
  const most = maximum[weights];
  const parts = [
    coefficientText(result, level),
    `standard error ${decimalText(result.standardError, 3)}`,
    resampled.estimate !== null && "low" in resampled.interval
      ? `BCa bootstrap ${rangeText(resampled.interval)}`
      : "no bootstrap interval, as every resample gave the same value",
    most.estimate === null ? "" : `at most ${decimalText(most.estimate, 2)} with these numbers of each grade`,
  ];
  return `${name}: ${parts.filter(Boolean).join("; ")}.`;
}

function permutationLines({ permutation, n }: TableFindings): string[] {
  const linear = permutation?.linear;
  if (!linear || linear.estimate === null) return [];
  return [
    `With only ${n} radiographs: ${linear.method} of linear kappa against no relation, one-sided ${pText(linear.greater)}, doubled ${pText(linear.doubled)}.`,
  ];
}

function gradeText(grade: TableFindings["grades"][number]): string {
  const { value, both, one } = grade;
  const name = `row ${grade.grade + 1}`;
  return value.estimate === null ? `${name} not used` : `${name} ${percentText(value.estimate, both + one)}`;
}

function dependenceLine({ grades }: TableFindings): string {
  const most = grades.toSorted((a, b) => b.prevalence - a.prevalence)[0]!;
  const bias = grades.toSorted((a, b) => Math.abs(b.biasIndex) - Math.abs(a.biasIndex))[0]!;
  return `Most readings (${decimalText(most.prevalence * 100, 0)}%) are row ${most.grade + 1}, prevalence index ${decimalText(most.prevalenceIndex, 2)}; the raters differ most in how often they use row ${bias.grade + 1}, bias index ${decimalText(bias.biasIndex, 2)}.`;
}
