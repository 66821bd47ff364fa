import type { Readings } from "../../cases/readings/types.js";
import type { GradeFindings } from "../../findings/agreement/grade-findings.js";
import type { MeasurementFindings } from "../../findings/agreement/measurement-findings.js";
import { counted, decimalText, levelText, pText } from "../number-text.js";
import { coefficientText, rangeText, shareText } from "./coefficient-text.js";

/** A file of readings in sentences. */
export function readingsAgreementText(
  readings: Readings,
  graded: GradeFindings | null,
  measured: MeasurementFindings | null,
): string {
  const { radiographs, columns, notes } = readings;
  const lines = [
    `${counted(radiographs.length, "radiograph")}, ${counted(columns.length, "column")} of readings: ${columns.map(({ name }) => name).join(", ")}.`,
    ...notes,
  ];
  if (graded) lines.push("", ...gradedLines(readings, graded));
  if (measured) lines.push("", ...measuredLines(readings, measured));
  return lines.join("\n");
}

function pairName(readings: Readings, [a, b]: readonly [number, number]): string {
  return `${readings.columns[a]!.name} and ${readings.columns[b]!.name}`;
}

function gradedLines(readings: Readings, found: GradeFindings): string[] {
  const { level } = found;
  const pairs = found.pairs.flatMap((pair) => {
    const name = pairName(readings, pair.raters);
    if (pair.agreement.estimate === null) return [`${name}: ${pair.agreement.because}.`];
    const kappas = (["unweighted", "linear", "quadratic"] as const).map((weights) => {
      const kappa = pair.kappa[weights];
      return kappa.estimate === null
        ? `${weights} kappa not estimable (${kappa.because})`
        : `${weights} kappa ${coefficientText(kappa, level)}`;
    });
    return [`${name}: the same grade in ${shareText(pair.agreement, level)}; ${kappas.join("; ")}.`];
  });
  const { fleiss, conger, ac1, alpha, variation } = found;
  const pooled = [
    ...(found.pooled.length < readings.columns.length
      ? [`Over all raters, first readings only (${found.pooled.map((k) => readings.columns[k]!.name).join(", ")}):`]
      : []),
    `Fleiss' kappa (${counted(fleiss.images, "complete radiograph")}): ${coefficientText(fleiss, level)}.`,
    `Conger's kappa, linear weights: ${coefficientText(conger, level)}.`,
    `AC1 (${counted(ac1.images, "radiograph")} with a reading): ${coefficientText(ac1, level)}.`,
    `Krippendorff's alpha (${counted(alpha.ordinal.images, "radiograph")} read twice or more): nominal ${coefficientText(alpha.nominal, level)}; ordinal ${coefficientText(alpha.ordinal, level)}; interval ${coefficientText(alpha.interval, level)}; BCa limits, ${found.resamples} resamples, seed ${found.seed}.`,
  ];
  if (variation)
    pooled.push(
      `Raters with themselves, linear kappa: ${coefficientText(variation.intra.kappa, level)}; with each other: ${coefficientText(variation.inter.kappa, level)}; difference ${coefficientText(variation.difference, level)}.`,
    );
  return [...pairs, ...pooled];
}

function measuredLines(readings: Readings, found: MeasurementFindings): string[] {
  const { level, icc, error, repeats } = found;
  const pairs = found.pairs.map((pair) => {
    const name = pairName(readings, pair.raters);
    if (!("bias" in pair.limits)) return `${name}: no limits of agreement (${pair.limits.because}).`;
    const { bias, lower, upper, n } = pair.limits;
    const slope = "slope" in pair.proportional ? `; difference against mean, ${pText(pair.proportional.p)}` : "";
    return `${name}, ${counted(n, "radiograph")}: mean difference ${decimalText(bias.estimate, 1)} (${levelText(level)} CI ${rangeText(bias.interval, 1)}); 95% limits of agreement ${decimalText(lower.estimate, 1)} (${rangeText(lower.exact, 1)}) to ${decimalText(upper.estimate, 1)} (${rangeText(upper.exact, 1)})${slope}.`;
  });
  const sem = error.agreement;
  return [
    ...pairs,
    `Intraclass correlation, two-way random, absolute agreement, single reading: ${coefficientText(icc.agreement, level)}.`,
    `Intraclass correlation, two-way mixed, consistency, single reading: ${coefficientText(icc.consistency, level)}.`,
    "estimate" in sem && sem.estimate !== null
      ? `Standard error of measurement between raters ${decimalText(sem.estimate, 1)} (${levelText(level)} CI ${rangeText(sem.interval, 1)}); smallest detectable change ${decimalText(sem.smallestDetectableChange, 1)}.`
      : `Standard error of measurement: not estimable (${sem.because}).`,
    ...(repeats === null
      ? []
      : repeats.estimate === null
        ? [`Repeats by one rater: not estimable (${repeats.because}).`]
        : [
            `Repeats by one rater: within-subject standard deviation ${decimalText(repeats.estimate, 1)} (${levelText(level)} CI ${rangeText(repeats.interval, 1)}), repeatability ${decimalText(repeats.repeatability, 1)}.`,
          ]),
  ];
}
