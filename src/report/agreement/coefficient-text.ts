import type { Interval, NotEstimable } from "../../stats/types.js";
import { decimalText, levelText, percentRangeText, percentText } from "../number-text.js";

/** What a coefficient with limits has in common, whatever its method. */
export type Coefficient = { readonly estimate: number; readonly interval: Interval | NotEstimable } | NotEstimable;

/** "0.68 (95% CI 0.53 to 0.83)", or why there is none. */
export function coefficientText(result: Coefficient, level: number, decimals = 2): string {
  if (result.estimate === null) return `not estimable (${result.because})`;
  const value = decimalText(result.estimate, decimals);
  return "low" in result.interval
    ? `${value} (${levelText(level)} CI ${rangeText(result.interval, decimals)})`
    : `${value} (no interval: ${result.interval.because})`;
}

/** "0.53 to 0.83". */
export function rangeText({ low, high }: Interval, decimals = 2): string {
  const limit = (value: number): string =>
    Number.isFinite(value) ? decimalText(value, decimals) : value > 0 ? "no upper limit" : "no lower limit";
  return `${limit(low)} to ${limit(high)}`;
}

/** "46 of 60 radiographs (77%; 95% CI 65 to 86)". */
export function shareText(
  result: { readonly agreeing: number; readonly n: number; readonly estimate: number; readonly interval: Interval },
  level: number,
): string {
  const { agreeing, n, estimate, interval } = result;
  return `${agreeing} of ${n} ${n === 1 ? "radiograph" : "radiographs"} (${percentText(estimate, n)}; ${levelText(level)} CI ${percentRangeText(interval, n)})`;
}
