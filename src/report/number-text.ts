import type { Interval } from "../stats/types.js";

const formats = new Map<number, Intl.NumberFormat>();

/** A number with so many decimals and a true minus sign (U+2212). */
export function decimalText(value: number, decimals: number): string {
  let format = formats.get(decimals);
  if (format === undefined) {
    format = new Intl.NumberFormat("en-GB", {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      useGrouping: false,
    });
    formats.set(decimals, format);
  }
  const text = format.format(value);
  return Number(text) === 0 ? text.replace(/^[-\u2212]/, "") : text.replace(/^-/, "\u2212");
}

/** Decimals that a percentage of so many cases carries: none below 100 cases, else one. */
export function percentDecimals(trials: number): 0 | 1 {
  return trials < 100 ? 0 : 1;
}

/** "81%" of 64 cases, "81.3%" of 640. */
export function percentText(proportion: number, trials: number): string {
  return `${decimalText(proportion * 100, percentDecimals(trials))}%`;
}

/** "70 to 89", in per cent, to the digits of the percentage it stands beside. */
export function percentRangeText({ low, high }: Interval, trials: number): string {
  const decimals = percentDecimals(trials);
  return `${decimalText(low * 100, decimals)} to ${decimalText(high * 100, decimals)}`;
}

/** A ratio to two significant digits, infinity in words. */
export function ratioText(value: number): string {
  if (value === Infinity) return "infinity";
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  return decimalText(value, Math.max(0, Math.min(6, 1 - size)));
}

/** "0.16 to 9.7"; an open end is said in words. */
export function ratioRangeText({ low, high }: Interval): string {
  return `${ratioText(low)} to ${high === Infinity ? "no upper limit" : ratioText(high)}`;
}

/** "p = 0.087": two decimals from 0.1 up, three below, never 0 and never 1. */
export function pText(p: number): string {
  if (p < 0.001) return "p < 0.001";
  if (p > 0.99) return "p > 0.99";
  return `p = ${decimalText(p, p < 0.0995 ? 3 : 2)}`;
}

/** "95%", "97.5%". */
export function levelText(level: number): string {
  return `${decimalText(level * 100, Number.isInteger(Math.round(level * 1e6) / 1e4) ? 0 : 1)}%`;
}

/** "1 child", "2 children". */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** "II, III and IV". */
export function listText(items: readonly string[], last = "and"): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

/** A difference of two shares in percentage points, rounded to whole ones. */
export function pointsText(difference: number): string {
  return decimalText(difference * 100, 0);
}

export function pointsRangeText({ low, high }: Interval): string {
  return `${pointsText(low)} to ${pointsText(high)}`;
}
