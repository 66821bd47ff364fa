import { requireLevel, requireOptions } from "../guards.js";
import type { NotEstimable } from "../types.js";
import { wilson } from "../wilson.js";
import { fillBinomialMasses } from "./binomial-masses.js";

export type CasesForWidth = {
  readonly method: "expected width of the Wilson interval";
  readonly expected: number;
  readonly level: number;
  readonly width: number;
} & ({ readonly cases: number; readonly expectedWidth: number } | NotEstimable);

const most = 10_000;

/**
 * How many cases a series needs so that the Wilson interval of its rate is no wider than wanted on average: the width of
 * every possible count, weighted by its chance under the expected rate.
 *
 * @param expected rate that is expected, in [0, 1]
 * @param options.width wanted full width, a fraction in (0, 1)
 * @param options.level coverage in (0, 1); default 0.95
 * @returns the least number of cases, or why there is none: more than 10,000 are not tried
 * @throws RangeError when the rate, the width or the level is out of range; TypeError for unknown options
 * @see Brown, Cai and DasGupta 2001, Stat Sci 16:101-133, for the expected width; Wilson 1927 for the interval
 * @example casesForWidth(0.85, { width: 0.2 }).cases // => 47
 */
export function casesForWidth(
  expected: number,
  options: { readonly width: number; readonly level?: number },
): CasesForWidth {
  requireOptions("casesForWidth", options, ["width", "level"]);
  const { width, level = 0.95 } = options;
  requireLevel("casesForWidth", level);
  if (!(expected >= 0 && expected <= 1))
    throw new RangeError(`casesForWidth: the expected rate must lie in [0, 1], got ${expected}`);
  if (!(width > 0 && width < 1)) throw new RangeError(`casesForWidth: width must lie between 0 and 1, got ${width}`);
  const shared = { method: "expected width of the Wilson interval", expected, level, width } as const;
  const masses = new Float64Array(most + 1);
  const widthOf = (cases: number): number => {
    const { from, to } = fillBinomialMasses(masses, cases, expected);
    let sum = 0;
    for (let k = from; k <= to; k++) {
      const { low, high } = wilson(k, cases, { level }).interval;
      sum += masses[k]! * (high - low);
    }
    return sum;
  };
  if (widthOf(most) > width) return { ...shared, estimate: null, because: `more than ${most} cases are not tried` };
  // More cases never widen it on average, so the place where it passes the wanted width is found by halving.
  let [short, enough] = [0, most];
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (widthOf(middle) > width) short = middle;
    else enough = middle;
  }
  return { ...shared, cases: enough, expectedWidth: widthOf(enough) };
}
