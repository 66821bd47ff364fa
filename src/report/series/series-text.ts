import type { BandedRate, CardFindings } from "../../findings/series/series-findings.js";
import type { Interval, NotEstimable } from "../../stats/types.js";
import { percentRangeText, percentText } from "../number-text.js";

/** "49 of 54", or why there is no count. */
export function countText(rate: BandedRate | NotEstimable): string {
  return rate.estimate === null ? "not stated" : `${rate.successes} of ${rate.cases}`;
}

/** "91% (80 to 96)", or why not. */
export function bandText(rate: BandedRate | NotEstimable): string {
  return rate.estimate === null ? rate.because : shareText(rate.estimate, rate.interval, rate.cases);
}

/** "77% (60 to 88)" of a rate that stands for so many cases. */
export function shareText(estimate: number, interval: Interval, cases: number): string {
  return `${percentText(estimate, cases)} (${percentRangeText(interval, cases)})`;
}

/** Cases of a series, for the digits of its percentages. */
export function casesOf({ crude }: CardFindings): number {
  return crude.estimate === null ? 1 : crude.cases;
}

/** What is said of a series whose success is not ours. */
export function matchNote({ card }: CardFindings): string {
  if (card.match === "different") return " (another definition)";
  return card.match === "not stated" ? " (definition not known)" : "";
}
