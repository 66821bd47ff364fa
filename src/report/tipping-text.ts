import type { Tipping, TippingCell } from "../findings/tipping.js";
import { counted, levelText, pointsRangeText, pointsText } from "./number-text.js";
import type { TextTable } from "./text.js";

/** Whether and when the missing cases could turn the comparison, in two sentences. */
export function tippingText({ first, second, cells }: Tipping): string {
  const all = cells.flat();
  const clear = all.filter(excludesZero).length;
  const apart =
    clear === 0
      ? "the interval includes 0 every time"
      : clear === all.length
        ? "the interval excludes 0 every time"
        : `the interval excludes 0 in ${clear} of ${counted(all.length, "outcome")}`;
  return `Missing: ${first.lost} ${first.name}, ${second.lost} ${second.name}. ${order(first.name, second.name, all)}; ${apart}.`;
}

/** The interval of the difference excludes 0. */
export function excludesZero({ interval: { low, high } }: TippingCell): boolean {
  return low > 0 || high < 0;
}

function order(first: string, second: string, all: readonly TippingCell[]): string {
  const differences = all.map(({ difference }) => difference);
  const [low, high] = [Math.min(...differences), Math.max(...differences)];
  const between = (a: number, b: number): string =>
    pointsText(a) === pointsText(b) ? `${pointsText(a)} points` : `${pointsText(a)} to ${pointsText(b)} points`;
  if (low > 0) return `Whatever became of them, ${first} stays ahead, by ${between(low, high)}`;
  if (high < 0) return `Whatever became of them, ${second} stays ahead, by ${between(-high, -low)}`;
  if (low === 0 && high === 0) return "Whatever became of them, the two are equal";
  return `What became of them can turn the order, from ${pointsText(low)} to ${pointsText(high)} points (${first} less ${second})`;
}

/** Every outcome of the missing: the difference in points with its interval. */
export function tippingTable({ first, second, level, cells }: Tipping): TextTable {
  return {
    caption: `Difference in success, ${first.name} less ${second.name}, by how many of the missing failed`,
    head: ["", ...cells[0]!.map((_, j) => `${j} of ${second.lost} ${second.name} failed`)],
    rows: cells.map((row, i) => [
      `${i} of ${first.lost} ${first.name} failed`,
      ...row.map(({ difference, interval }) => `${pointsText(difference)} (${pointsRangeText(interval)})`),
    ]),
    notes: [`Percentage points; Newcombe ${levelText(level)} intervals.`],
  };
}
