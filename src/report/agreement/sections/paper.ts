import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { counted, decimalText, levelText, listText } from "../../number-text.js";
import type { Section } from "../../text.js";
import { coefficientText, rangeText, shareText } from "../coefficient-text.js";
import { chosenPair, columnName } from "./page-words.js";
import { reportingItems } from "./reporting-items.js";

/** What must the paper say? */
export function paper(page: AgreementPage): Section {
  return {
    id: "paper",
    question: "What must the paper say?",
    answer: [[methods(page)], [results(page)]],
    cautions: [],
    tables: [reportingItems(page)],
  };
}

function methods({ readings, grades, choices, measured }: AgreementPage): string {
  const raters = [...new Set(readings.columns.map(({ rater }) => rater))];
  const twice = raters.filter((rater) => readings.columns.filter((column) => column.rater === rater).length > 1);
  const scale =
    measured === null
      ? `Grades were recorded on the scale ${grades.grades.join(", ")}.`
      : `Measurements were graded at the cut-points ${choices.cuts.join(", ")} (${grades.grades.join(", ")}).`;
  const again = twice.length > 0 ? ` ${listText(twice)} read a second time.` : "";
  const correlation = measured
    ? " Measurements are described by the mean difference, limits of agreement with exact limits, the standard error of measurement and the intraclass correlation (two-way random, absolute agreement, single reading)."
    : "";
  return `${counted(readings.radiographs.length, "radiograph")} were read by ${counted(raters.length, "observer")}.${again} ${scale} Agreement is given as the cross-table, the share with the same grade (Wilson interval) and kappa with linear weights (large-sample standard error of Fleiss, Cohen and Everitt; quadratic and unweighted beside it); several observers by Krippendorff's ordinal alpha (BCa limits, ${grades.resamples} resamples of radiographs).${correlation}`;
}

function results(page: AgreementPage): string {
  const { grades, choices, measured, regrading } = page;
  const pair = chosenPair(page);
  const { level } = choices;
  const names = `${columnName(page, pair.raters[0])} and ${columnName(page, pair.raters[1])}`;
  if (pair.agreement.estimate === null) return `${names}: ${pair.agreement.because}.`;
  const { variation, alpha } = grades;
  const kappa = pair.kappa.linear;
  const parts = [
    `${names} gave the same grade to ${shareText(pair.agreement, level)}; kappa with linear weights was ${coefficientText(kappa, level)}.`,
    variation && variation.intra.kappa.estimate !== null
      ? `Within observers kappa was ${coefficientText(variation.intra.kappa, level)}.`
      : "",
    alpha.ordinal.estimate === null ? "" : `Over all observers alpha was ${coefficientText(alpha.ordinal, level)}.`,
  ];
  if (measured) {
    const found = measured.pairs.find(({ raters }) => raters[0] === pair.raters[0] && raters[1] === pair.raters[1])!;
    if ("bias" in found.limits)
      parts.push(
        `The mean difference was ${decimalText(found.limits.bias.estimate, 1)} (${levelText(level)} CI ${rangeText(found.limits.bias.interval, 1)}), with limits of agreement ${decimalText(found.limits.lower.estimate, 1)} to ${decimalText(found.limits.upper.estimate, 1)}.`,
      );
    parts.push(`The intraclass correlation was ${coefficientText(measured.icc.agreement, level)}.`);
  }
  if (regrading)
    parts.push(
      `Given the error of measurement, about ${decimalText(regrading.chances.grades.expected, 0)} of ${regrading.chances.cases.length} grades would be others.`,
    );
  return parts.filter(Boolean).join(" ");
}
