import type { Rate } from "../findings/types.js";
import type { CaseCount } from "../findings/types.js";
import { levelText, percentRangeText, percentText } from "./number-text.js";
import type { OpenNumber, Span } from "./text.js";

/** "52 of 64", opening its cases. */
export function countSpan(count: CaseCount, title: string): OpenNumber {
  return {
    text: `${count.successes} of ${count.trials}`,
    title,
    cases: [...count.succeeded, ...count.failed, ...count.asked],
  };
}

/** "9 fractures", or any other text, opening the cases it counts. */
export function casesSpan(text: string, title: string, cases: readonly string[]): OpenNumber {
  return { text, title, cases };
}

/** "52 of 64 shoulders (81%; 95% CI 70 to 89)"; bounds instead of a rate while questions are open. */
export function rateSpans(rate: Rate, title: string, unit = ""): Span[] {
  const { count } = rate;
  const of = unit ? ` ${unit}` : "";
  if (rate.bounds !== undefined) {
    return [casesSpan(boundsText(rate.bounds), title, countSpan(count, title).cases), `${of} (questions are open)`];
  }
  return [countSpan(count, title), rate.wilson === null ? of : `${of} (${rateText(rate)})`];
}

/** "at least 40, at most 43 of 51": all that can be said before the questions are answered. */
function boundsText({ low, high }: NonNullable<Rate["bounds"]>): string {
  const of = low.trials === high.trials ? "" : ` of ${low.trials}`;
  return `at least ${low.successes}${of}, at most ${high.successes} of ${high.trials}`;
}

/** "81%; 95% CI 70 to 89". */
export function rateText(rate: Rate): string {
  if (rate.estimate === null || rate.wilson === null) return rate.because ?? "no cases";
  const { trials } = rate.count;
  return `${percentText(rate.estimate, trials)}; ${levelText(rate.level)} CI ${percentRangeText(rate.wilson, trials)}`;
}

/** Percentage alone, or why there is none. */
export function estimateText(rate: Rate): string {
  if (rate.bounds !== undefined) return "questions open";
  return rate.estimate === null ? "none" : percentText(rate.estimate, rate.count.trials);
}

/** Interval alone: "70 to 89". */
export function intervalText(rate: Rate): string {
  return rate.wilson === null || rate.bounds !== undefined ? "" : percentRangeText(rate.wilson, rate.count.trials);
}
