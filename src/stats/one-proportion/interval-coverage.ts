import { betaCdf } from "../../numeric/beta.js";
import { requireLevel, requireOptions } from "../guards.js";
import { fillBinomialMasses } from "./binomial-masses.js";
import { covered, expected, limitsOf, type Limits } from "./count-limits.js";
import { proportionMethods, type ProportionMethod } from "./proportion-intervals.js";

/** Behaviour of one method, exact up to rounding. */
export interface MethodCoverage {
  readonly method: ProportionMethod;
  /** Chance that the interval holds the true proportion, at each of `proportions`. */
  readonly coverage: readonly number[];
  /** Expected width of the interval within [0, 1], at each of `proportions`. */
  readonly width: readonly number[];
  /** Coverage averaged over all true proportions from 0 to 1. */
  readonly meanCoverage: number;
  /** Width averaged likewise. */
  readonly meanWidth: number;
}

export interface IntervalCoverageResult {
  readonly method: "exactCoverage";
  readonly trials: number;
  readonly level: number;
  readonly proportions: readonly number[];
  readonly methods: readonly MethodCoverage[];
}

export interface IntervalCoverageOptions {
  /** True proportions in [0, 1]; default 0.005 to 0.995 by 0.005. */
  readonly proportions?: readonly number[];
  /** Default all. */
  readonly methods?: readonly ProportionMethod[];
  /** Nominal coverage, in (0, 1); default 0.95. */
  readonly level?: number;
}

const defaultProportions = Array.from({ length: 199 }, (_, i) => (i + 1) / 200);

/**
 * How often each interval for one proportion holds the truth, and how wide it is: sums over all counts, no simulation.
 *
 * @param trials integer from 1 to 10,000
 * @throws RangeError when an argument is out of range; TypeError when a method is not known
 * @see Brown, Cai and DasGupta 2001, Stat Sci 16:101-133
 * @example intervalCoverage(10, { methods: ["wald"], proportions: [0.05] }).methods[0].coverage[0] // => 0.4002345628
 */
export function intervalCoverage(trials: number, options: IntervalCoverageOptions = {}): IntervalCoverageResult {
  requireOptions("intervalCoverage", options, ["proportions", "methods", "level"]);
  const { proportions = defaultProportions, methods = proportionMethods, level = 0.95 } = options;
  requireLevel("intervalCoverage", level);
  if (!(Number.isInteger(trials) && trials >= 1 && trials <= 10_000))
    throw new RangeError(`intervalCoverage: trials must be an integer from 1 to 10000, got ${trials}`);
  for (const p of proportions)
    if (!(p >= 0 && p <= 1)) throw new RangeError(`intervalCoverage: proportions must lie in [0, 1], got ${p}`);

  const limits = methods.map((method) => limitsOf(trials, method, level));
  const coverage = methods.map(() => new Array<number>(proportions.length));
  const width = methods.map(() => new Array<number>(proportions.length));
  const masses = new Float64Array(trials + 1);
  const sums = new Float64Array(trials + 2);
  proportions.forEach((p, i) => {
    const filled = fillBinomialMasses(masses, trials, p);
    for (let k = filled.from; k <= filled.to; k++) sums[k + 1] = (k === filled.from ? 0 : sums[k]!) + masses[k]!;
    sums[filled.from] = 0;
    limits.forEach((of, m) => {
      coverage[m]![i] = covered(of, p, sums, filled);
      width[m]![i] = expected(of.width, masses, filled);
    });
  });
  const described = methods.map((method, m) => ({
    method,
    coverage: coverage[m]!,
    width: width[m]!,
    ...averages(trials, limits[m]!),
  }));
  return { method: "exactCoverage", trials, level, proportions, methods: described };
}

/** Over p uniform in [0, 1] every count is equally likely, and p given the count is Beta(k + 1, n - k + 1). */
function averages(
  trials: number,
  { low, high, width }: Limits,
): { readonly meanCoverage: number; readonly meanWidth: number } {
  let [inside, wide] = [0, 0];
  for (let k = 0; k <= trials; k++) {
    const shape = { a: k + 1, b: trials - k + 1 };
    inside += betaCdf(high[k]!, shape) - betaCdf(low[k]!, shape);
    wide += width[k]!;
  }
  return { meanCoverage: inside / (trials + 1), meanWidth: wide / (trials + 1) };
}
