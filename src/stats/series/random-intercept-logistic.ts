import { chiSquareUpper, chiSquareUpperQuantile } from "../../numeric/chi-square.js";
import { requireLevel, requireOptions } from "../guards.js";
import { cholesky } from "../models/cholesky.js";
import { constrainedLimit } from "../models/constrained-limit.js";
import type { Likelihood } from "../models/likelihood.js";
import { logisticDesign, type Design, type LogisticData } from "../models/logistic-data.js";
import { maximise, type Maximum } from "../models/maximise.js";
import { jointLimit } from "../models/profile-limit.js";
import { findSeparation } from "../models/separation.js";
import type { Interval, NotEstimable } from "../types.js";
import {
  adaptiveGaussHermite,
  randomInterceptLikelihood,
  trapezoidal,
  type Quadrature,
  type QuadratureRuleName,
} from "./random-intercept-likelihood.js";

export interface RandomInterceptLogistic {
  readonly method: "logistic-normal random intercept, maximum likelihood";
  /** Gauss-Hermite is checked with twice the nodes; the trapezoidal rule takes over where it is not accurate. */
  readonly quadrature: { readonly rule: QuadratureRuleName; readonly nodes: number };
  readonly level: number;
  readonly series: number;
  readonly cases: number;
  readonly successes: number;
  /** Without binomial coefficients. */
  readonly logLikelihood: number;
  readonly coefficients: readonly {
    readonly name: string;
    readonly estimate: number;
    /** From the observed information. */
    readonly standardError: number;
    /** Profile-likelihood limits; a limit beyond 60 is infinite. */
    readonly interval: Interval;
  }[];
  /** Standard deviation between series on the log odds; its standard error is null at 0, where it means nothing. */
  readonly tau: { readonly estimate: number; readonly standardError: number | null; readonly interval: Interval };
  /** Likelihood-ratio test that tau is 0, by half a chi-square of 1 degree of freedom. */
  readonly noVariation: { readonly statistic: number; readonly p: number };
}

/**
 * Logistic model of several series, each with its own normal deviation on the log odds, fitted in one step to the counts
 * (no correction of zero cells), with profile limits of every coefficient and of the standard deviation between series.
 *
 * @param data one row a series: successes, trials, covariates; a constant is added
 * @param options.level coverage in (0, 1); default 0.95
 * @param options.nodes of the Gauss-Hermite rule, 15 to 101; default 25
 * @returns the fit, or null with the reason: fewer than two series, all or no success, every series all or nothing,
 *   separation, a constant or dependent column, no convergence
 * @throws RangeError, TypeError on wrong counts, lengths, values or options
 * @see Stijnen, Hamza and Oezdemir 2010, Stat Med 29:3046-3067; Self and Liang 1987, J Am Stat Assoc 82:605-610 (test)
 * @example randomInterceptLogistic({ successes: [3, 5], trials: [3, 5], covariates: [] }).because // => "every case succeeded"
 */
export function randomInterceptLogistic(
  data: LogisticData,
  options: { readonly level?: number; readonly nodes?: number } = {},
): RandomInterceptLogistic | NotEstimable {
  requireOptions("randomInterceptLogistic", options, ["level", "nodes"]);
  const { level = 0.95, nodes = 25 } = options;
  requireLevel("randomInterceptLogistic", level);
  if (!(Number.isInteger(nodes) && nodes >= 15 && nodes <= 101))
    throw new RangeError(`randomInterceptLogistic: nodes must be an integer from 15 to 101, got ${nodes}`);
  const design = logisticDesign("randomInterceptLogistic", data);
  if ("estimate" in design) return design;
  const because = whyNot(design);
  if (because !== null) return { estimate: null, because };
  const quick = fittedBy(design, adaptiveGaussHermite(nodes), level);
  return quick ?? fittedBy(design, trapezoidal(), level) ?? { estimate: null, because: "the fit did not converge" };
}

function whyNot(design: Design): string | null {
  if (design.rows < 2) return "variation between series needs at least 2 series, there is 1";
  if (design.events === 0) return "no case succeeded";
  if (design.events === design.cases) return "every case succeeded";
  if (design.successes.every((count, row) => count === 0 || count === design.trials[row]!))
    return "every series is all or nothing, so that the variation between them has no finite estimate";
  const { kind, columns } = findSeparation(design);
  return kind === "none"
    ? null
    : `no finite estimate for ${columns.map((name) => `"${name}"`).join(", ")} (separation)`;
}

/** Log likelihood that Gauss-Hermite may be off at any point used. */
const accuracy = 1e-10;
/** Deviations between series, and log odds, farther out than this are taken as infinite. */
const farthest = 60;

/** The fit by one rule, or null where it fails or is not accurate enough. */
function fittedBy(design: Design, quadrature: Quadrature, level: number): RandomInterceptLogistic | null {
  const likelihood = randomInterceptLikelihood(design, { quadrature });
  const tauAt = design.columns;
  const top = highest(likelihood, new Float64Array(tauAt + 1), []);
  const without = maximise(likelihood, { start: new Float64Array(tauAt + 1), held: [tauAt] });
  if (top === null || without === null || top.beta[tauAt]! > farthest) return null;
  const drop = chiSquareUpperQuantile(1 - level, 1) / 2;
  const used = [top];
  const limit = (parameter: number, side: -1 | 1): number | null => {
    const joint = top.beta[tauAt]! > 0.1 ? jointLimit(likelihood, top, { parameter, side, drop }) : null;
    // The likelihood is even in tau: a search for its lower limit that passes 0 ends at the upper one's mirror image.
    const downTau = parameter === tauAt && side === -1;
    if (joint !== null && isTop(joint, parameter) && !(downTau && joint.beta[tauAt]! < 0)) {
      used.push(joint);
      return joint.beta[parameter]!;
    }
    const outside = downTau ? top.beta[tauAt]! : Infinity;
    return constrainedLimit(top, { parameter, side, drop, farthest, outside }, (start) => {
      const fit = highest(likelihood, start, [parameter]);
      if (fit !== null) used.push(fit);
      return fit;
    });
  };
  const limits = Array.from({ length: tauAt }, (_, j) => ({ low: limit(j, -1), high: limit(j, 1) }));
  const zero = top.beta[tauAt] === 0;
  const statistic = zero ? 0 : Math.max(0, 2 * (top.at.value - without.at.value));
  limits.push({ low: statistic <= 2 * drop ? 0 : limit(tauAt, -1), high: limit(tauAt, 1) });
  if (!limits.every(isFound) || !accurate(design, quadrature, used)) return null;
  return result(design, { top, limits, statistic, quadrature, level });
}

/** Whether a point is highest over the other parameters: tau away from 0, the likelihood concave there. */
function isTop({ beta, at }: Maximum, held: number): boolean {
  const size = beta.length;
  if (held !== size - 1 && !(beta[size - 1]! > 0.05)) return false;
  const free = Array.from({ length: size }, (_, j) => j).filter((j) => j !== held);
  const part = Float64Array.from(free.flatMap((j) => free.map((k) => at.curvature[j * size + k]!)));
  return cholesky(part, free.length) !== null;
}

const isFound = (limit: { readonly low: number | null; readonly high: number | null }): limit is Interval =>
  limit.low !== null && limit.high !== null;

/** Gauss-Hermite against the same rule with more nodes, at the top and where the search for the limits went. */
function accurate(design: Design, { rule, peak }: Quadrature, used: readonly Maximum[]): boolean {
  if (rule === "trapezoidal") return true;
  const finer = adaptiveGaussHermite(Math.min(128, 2 * peak.nodes.length));
  const check = randomInterceptLikelihood(design, { quadrature: finer });
  // The farther out the harder: the top, and the points with the largest deviations between series.
  const hardest = [...used].sort((a, b) => b.beta.at(-1)! - a.beta.at(-1)!).slice(0, 2);
  return [used[0]!, ...hardest].every(({ beta, at }) => {
    const value = check.evaluate(beta)?.value;
    return value !== undefined && Math.abs(value - at.value) < accuracy * Math.max(1, Math.abs(value) / 100);
  });
}

function result(
  design: Design,
  of: {
    readonly top: Maximum;
    readonly limits: readonly Interval[];
    readonly statistic: number;
    readonly quadrature: Quadrature;
    readonly level: number;
  },
): RandomInterceptLogistic {
  const { top, limits, statistic, quadrature, level } = of;
  const { columns: tauAt, names, scales } = design;
  const tau = top.beta[tauAt]!;
  return {
    method: "logistic-normal random intercept, maximum likelihood",
    quadrature: { rule: quadrature.rule, nodes: quadrature.peak.nodes.length },
    level,
    series: design.rows,
    cases: design.cases,
    successes: design.events,
    logLikelihood: top.at.value,
    coefficients: names.map((name, j) => ({
      name,
      estimate: top.beta[j]! / scales[j]!,
      standardError: deviation(top, j) / scales[j]!,
      interval: { low: limits[j]!.low / scales[j]!, high: limits[j]!.high / scales[j]! },
    })),
    tau: { estimate: tau, standardError: tau === 0 ? null : deviation(top, tauAt), interval: limits[tauAt]! },
    noVariation: { statistic, p: statistic === 0 ? 1 : chiSquareUpper(statistic, 1) / 2 },
  };
}

const deviation = (top: Maximum, j: number): number => Math.sqrt(top.at.inverse[j * top.beta.length + j]!);

/**
 * The likelihood is even in tau and flat at 0, where a search would rest though it is no top: it starts away from 0, and
 * an end that is nearly 0 is compared with 0 itself.
 */
function highest(likelihood: Likelihood, start: Float64Array, held: readonly number[]): Maximum | null {
  const tauAt = likelihood.size - 1;
  if (held.includes(tauAt)) return maximise(likelihood, { start, held });
  const away = start.slice();
  away[tauAt] = Math.max(Math.abs(start[tauAt]!), 0.3);
  const found = maximise(likelihood, { start: away, held });
  if (found === null) return null;
  if (Math.abs(found.beta[tauAt]!) > 1e-4) {
    found.beta[tauAt] = Math.abs(found.beta[tauAt]!);
    return found;
  }
  const atZero = found.beta.slice();
  atZero[tauAt] = 0;
  return maximise(likelihood, { start: atZero, held: [...held, tauAt] });
}
