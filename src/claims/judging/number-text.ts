import type { PrintedNumber } from "../text/token.js";

/** A number to a fixed count of decimals, half away from zero, with a true minus sign. */
export function fixed(value: number, decimals: number): string {
  if (value === Infinity) return "∞";
  if (value === -Infinity) return "−∞";
  const text = formatFor(decimals).format(Math.abs(value));
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

const formats = new Map<number, Intl.NumberFormat>();

/** Making a format costs a hundred times as much as using it. */
function formatFor(decimals: number): Intl.NumberFormat {
  const known = formats.get(decimals);
  if (known) return known;
  const digits = { minimumFractionDigits: decimals, maximumFractionDigits: decimals, useGrouping: false };
  const format = new Intl.NumberFormat("en", digits);
  formats.set(decimals, format);
  return format;
}

/** A number as it was printed. */
export const asPrinted = (number: PrintedNumber): string => fixed(number.value, Math.min(12, number.decimals));

/** A p value to three decimals, or two leading digits below 0.001. */
export function pText(p: number): string {
  if (p >= 0.9995) return "1.000";
  return p >= 0.001 ? fixed(p, 3) : p > 0 ? p.toExponential(1).replace("e-", " × 10^−") : "0";
}

/** "a", "a and b", "a, b and c". */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;

/** A proportion in per cent with as many decimals as the print has. */
export const percentText = (proportion: number, decimals: number): string =>
  `${fixed(100 * proportion, Math.min(6, decimals))}%`;
