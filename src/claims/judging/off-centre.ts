import type { IntervalFact } from "../reading/facts.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";

/**
 * A finding when a correlation or kappa lies neither near the plain middle of its limits nor near that by Fisher's z,
 * nor between; null otherwise, and where a limit touches −1 or 1.
 * @param options.skew how far beyond Fisher's z the middle may lie, as a multiple of its distance from the plain middle
 * @param options.room further room, as a share of the interval's width
 */
export function offCentre(
  number: PrintedNumber,
  interval: IntervalFact,
  options: { readonly skew: number; readonly room: number },
): Finding | null {
  const [low, high] = [interval.low.value, interval.high.value];
  if (!(low > -1 && high < 1 && low < high)) return null;
  const half = ({ decimals }: PrintedNumber): number => 10 ** -decimals / 2;
  const plain = (low + high) / 2;
  const z = Math.tanh((Math.atanh(low) + Math.atanh(high)) / 2);
  const far = plain + options.skew * (z - plain);
  const room = options.room * (high - low) + half(number) + (half(interval.low) + half(interval.high)) / 2;
  if (number.value >= Math.min(plain, far) - room && number.value <= Math.max(plain, far) + room) return null;
  return {
    light: "fails",
    because: `No usual interval about ${asPrinted(number)} would be ${asPrinted(interval.low)} to ${asPrinted(interval.high)}, whose middle is ${fixed(plain, number.decimals + 1)}. Which number is right?`,
    reproducedBy: [],
  };
}
