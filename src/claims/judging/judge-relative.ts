import type { Count } from "../../stats/types.js";
import type { Quantity } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";

/**
 * A relative reduction against the two rates it compares, counted or only printed as percentages; either may be the
 * first. Percentages count with all values that print like them.
 */
export function judgeRelative(
  printed: Quantity,
  rates: readonly [Count | PrintedNumber, Count | PrintedNumber],
  recomputed: Record<string, number | null>,
): Finding | null {
  const [a, b] = rates.map(rangeOf) as [Rate, Rate];
  if (!(a.low > 0 && b.low > 0)) return null;
  const factor = printed.unit === "percent" || printed.value > 1 ? 100 : 1;
  const changes = [[a, b], [b, a]].map(([from, to]) => changeRange(from!, to!, factor)); // prettier-ignore
  recomputed.estimate = changes[0]!.middle;
  const half = 10 ** -printed.decimals / 2 + 1e-9;
  const fits = changes.some(({ low, high }) => printed.value >= low - half && printed.value <= high + half);
  const mark = factor === 100 ? "%" : "";
  const sum = `From ${fixed(100 * a.middle, 1)}% to ${fixed(100 * b.middle, 1)}% is a relative change of ${fixed(changes[0]!.middle, printed.decimals)}${mark}`;
  if (fits) return { light: "holds", because: `${sum}.`, reproducedBy: ["difference over the first rate"] };
  return { light: "fails", because: `${sum}, not ${asPrinted(printed)}${mark}. Which number is right?`, reproducedBy: [] };
} // prettier-ignore

interface Rate {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

function rangeOf(rate: Count | PrintedNumber): Rate {
  if ("trials" in rate) {
    const middle = rate.successes / rate.trials;
    return { low: middle, middle, high: middle };
  }
  const half = 10 ** -rate.decimals / 200;
  const middle = rate.value / 100;
  return { low: middle - half, middle, high: middle + half };
}

function changeRange(from: Rate, to: Rate, factor: 1 | 100): Rate {
  const change = (x: number, y: number): number => (factor * Math.abs(x - y)) / x;
  const all = [change(from.low, to.high), change(from.high, to.low), change(from.low, to.low), change(from.high, to.high)]; // prettier-ignore
  return { low: Math.min(...all), middle: change(from.middle, to.middle), high: Math.max(...all) };
}
