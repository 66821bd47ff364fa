import { counted, decimalText, levelText, percentRangeText, percentText } from "../../report/number-text.js";
import type { SeriesRate, SeriesRates, SeriesRatesResult } from "../../stats/series/series-rates.js";

/** Several series in sentences: each crude and with the common mix, then grade by grade. */
export function seriesText(result: SeriesRatesResult): string {
  const { series, level, mix, mixOf } = result;
  const shares = mix.map(({ grade, share }) => `${grade} ${decimalText(100 * share, 0)}%`).join(", ");
  const left = [...new Set(series.flatMap((one) => one.grades.map(({ grade }) => grade)))].filter(
    (grade) => !mix.some((part) => part.grade === grade && part.weight > 0),
  );
  return [
    `${counted(series.length, "series", "series")}; intervals are ${levelText(level)} Wilson.`,
    `Common mix of grades (${mixOf === "given" ? "as given" : "all series together"}): ${shares}.`,
    ...(left.length > 0 ? [`Not in the mix, so not in the standardised rates: ${left.join(", ")}.`] : []),
    "",
    ...series.flatMap((one) => oneSeries(one)),
    "Standardising removes a difference in grades only: what counted as success, who was left out and how long they were followed may still differ.",
  ].join("\n");
}

function oneSeries({ name, crude, grades, standardised }: SeriesRates): string[] {
  const adjusted =
    standardised.estimate === null
      ? `no rate with the common mix, because ${standardised.because}`
      : `${rangeText(standardised, crude.cases ?? 0)} with the common mix`;
  return [
    `${name}: ${rateText(crude)}; ${adjusted}.`,
    ...grades.map((one) => `  grade ${one.grade}: ${rateText(one)}`),
    "",
  ];
}

function rateText(rate: SeriesRate): string {
  if (rate.estimate === null) return rate.because;
  return `${rate.successes} of ${rate.cases} (${rangeText(rate, rate.cases)})`;
}

function rangeText(
  {
    estimate,
    interval,
  }: { readonly estimate: number; readonly interval: { readonly low: number; readonly high: number } },
  cases: number,
): string {
  return `${percentText(estimate, cases)}, ${percentRangeText(interval, cases)}`;
}
