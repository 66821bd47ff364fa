import { counted, decimalText, levelText, pText, ratioRangeText, ratioText } from "../../report/number-text.js";
import type { StrataAnalysis } from "./analyse-strata.js";

/** The analysis of strata in sentences. */
export function strataText(analysis: StrataAnalysis): string {
  const { strata, level, mantelHaenszel: adjusted, exactCommon: exact, homogeneity } = analysis;
  const lines = [`${counted(strata.length, "stratum", "strata")}; the first group against the second, within strata.`];
  const limits = (range: string): string => `${levelText(level)} CI ${range}`;

  const { interval, differenceInterval } = adjusted;
  if (adjusted.oddsRatio !== null)
    lines.push(
      `Mantel-Haenszel odds ratio: ${ratioText(adjusted.oddsRatio)} ` +
        `(${interval.low === null ? `no limits, because ${interval.because}` : limits(ratioRangeText(interval))}).`,
    );
  if (adjusted.difference !== null && differenceInterval.low !== null) {
    const points = (value: number): string => decimalText(100 * value, 0);
    lines.push(
      `Mantel-Haenszel difference: ${points(adjusted.difference)} percentage points ` +
        `(${limits(`${points(differenceInterval.low)} to ${points(differenceInterval.high)}`)}, by Sato's variance).`,
    );
  }
  if (adjusted.p !== null) lines.push(`Cochran-Mantel-Haenszel test: ${pText(adjusted.p)}, no continuity correction.`);
  if (adjusted.because !== undefined) lines.push(`Not given: ${adjusted.because}.`);
  lines.push(
    exact.oddsRatio === null
      ? `Exact common odds ratio: none, because ${exact.because}.`
      : `Exact common odds ratio: ${ratioText(exact.oddsRatio)} (${limits(ratioRangeText(exact.interval))}), ${pText(exact.p)}.`,
    homogeneityText(homogeneity),
  );
  return lines.join("\n");
}

function homogeneityText({ exact, ...large }: StrataAnalysis["homogeneity"]): string {
  const question = "Same odds ratio in every stratum?";
  if (large.breslowDay === null && exact.p === null) return `${question} Not tested, because ${large.because}.`;
  const first =
    large.breslowDay === null
      ? `No Breslow-Day test, because ${large.because}`
      : `Breslow-Day ${pText(large.breslowDay)}, with Tarone's correction ${pText(large.tarone)}`;
  return `${question} ${first}; exact ${exact.p === null ? `not computed, because ${exact.because}` : pText(exact.p)}.`;
}
