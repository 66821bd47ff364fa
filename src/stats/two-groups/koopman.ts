import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { normalUpperQuantile } from "../../numeric/normal.js";
import { requireLevel, requireOptions } from "../guards.js";
import type { Interval, NotEstimable } from "../types.js";
import { requireTwoGroups, type TwoGroups } from "./groups.js";
import { ratioOfProportions } from "./ratio-of-proportions.js";

/** Ratio of two independent proportions, first over second, with score limits. */
export type KoopmanResult = TwoGroups & {
  readonly method: "koopman";
  readonly level: number;
  readonly interval: Interval;
} & ({ readonly estimate: number } | NotEstimable);

/**
 * Risk ratio with Koopman's asymptotic score limits: the ratios that the score test does not reject. Defined for all data;
 * from 0 when the first group had no success, to infinity when the second had none.
 * @param groups successes of trials in each group
 * @param options level, default 0.95
 * @throws RangeError when a count or the level is out of range; TypeError when an option is unknown
 * @see Koopman 1984, Biometrics 40:513-517; Miettinen, Nurminen 1985, Stat Med 4:213-226 (without their N/(N - 1))
 * @example koopman({ first: { successes: 7, trials: 34 }, second: { successes: 1, trials: 34 } }).interval // => { low: 1.220853, high: 42.57572 }
 */
export function koopman({ first, second }: TwoGroups, options: { readonly level?: number } = {}): KoopmanResult {
  requireTwoGroups("koopman", { first, second });
  requireOptions("koopman", options, ["level"]);
  const { level = 0.95 } = options;
  requireLevel("koopman", level);
  const z = normalUpperQuantile((1 - level) / 2);
  const start = Math.log(
    (first.successes + 0.5) / (first.trials + 1) / ((second.successes + 0.5) / (second.trials + 1)),
  );
  // A level so small that z is 0 leaves the ratio itself, which may be 0 or infinite.
  const limit = (at: number): number =>
    at === 0
      ? first.successes / first.trials / (second.successes / second.trials)
      : Math.exp(fallingRoot((logRatio) => scoreOfRatio({ first, second }, Math.exp(logRatio)) - at, start));
  const interval = {
    low: first.successes === 0 ? 0 : limit(z),
    high: second.successes === 0 ? Infinity : limit(-z),
  };
  return { method: "koopman", first, second, level, ...ratioOfProportions({ first, second }), interval };
}

/** Score statistic of a ratio: p1 - ratio p2 over its standard error at the likeliest proportions with that ratio. */
function scoreOfRatio({ first, second }: TwoGroups, ratio: number): number {
  const { successes: a, trials: m } = first;
  const { successes: c, trials: n } = second;
  const b = ratio * (m + c) + a + n;
  const p2 = (2 * (a + c)) / (b + Math.sqrt(Math.max(0, b ** 2 - 4 * ratio * (m + n) * (a + c))));
  const p1 = Math.min(1, ratio * p2);
  const above = a / m - (ratio * c) / n;
  const error = Math.sqrt((p1 * (1 - p1)) / m + (ratio ** 2 * p2 * (1 - Math.min(1, p2))) / n);
  return above === 0 ? 0 : above / error;
}

/** Root of a falling function, bracketed by steps that double from the start. */
function fallingRoot(f: (x: number) => number, start: number): number {
  let low = start;
  let high = start;
  for (let step = 1; f(low) < 0; step *= 2) low -= step;
  for (let step = 1; f(high) > 0; step *= 2) high += step;
  return low === high ? start : bracketedRoot(f, { low, high });
}
