import { gaussHermite } from "../../numeric/gauss-hermite.js";
import { cholesky, inverseOf } from "../models/cholesky.js";
import type { Evaluation, Likelihood } from "../models/likelihood.js";
import type { Design } from "../models/logistic-data.js";

const LOG_SQRT_TWO_PI = 0.9189385332046728;

export const quadratureRules = ["adaptive Gauss-Hermite", "trapezoidal"] as const;
export type QuadratureRuleName = (typeof quadratureRules)[number];

/** Nodes and the logarithms of their weights. */
interface Nodes {
  /** Moved to where a row's integrand lies, as wide as it is there; else as they stand. */
  readonly moved: boolean;
  readonly nodes: Float64Array;
  readonly logWeights: Float64Array;
}

/** How the integrals over the deviations are taken. */
export interface Quadrature {
  readonly rule: QuadratureRuleName;
  /** For series with both outcomes, whose integrand is a peak. */
  readonly peak: Nodes;
  /** For series that are all or nothing, whose integrand is a normal density cut off on one side. */
  readonly step: Nodes;
}

/** Few nodes, moved to where each row's integrand lies. */
export function adaptiveGaussHermite(count: number): Quadrature {
  const { nodes, weights } = gaussHermite(count);
  const logWeights = weights.map((weight, at) => Math.log(weight) + nodes[at]! ** 2);
  const all = { moved: true, nodes, logWeights };
  return { rule: "adaptive Gauss-Hermite", peak: all, step: all };
}

/** Many nodes: exponentially accurate as long as the step is small against pi / tau, here to a tau of about 60. */
export function trapezoidal(): Quadrature {
  return { rule: "trapezoidal", peak: even(35, 1 / 5, true), step: even(9, 1 / 64, false) };
}

function even(reach: number, step: number, moved: boolean): Nodes {
  const nodes = Float64Array.from({ length: Math.round((2 * reach) / step) + 1 }, (_, at) => at * step - reach);
  return { moved, nodes, logWeights: nodes.map(() => Math.log(step)) };
}

/**
 * Log likelihood of a logistic model in which each row (series) has its own normal deviation with mean 0: parameters are
 * the coefficients and, last, the standard deviation tau, which may carry either sign. Score and information are moments
 * of the same quadrature as the value.
 *
 * @param design rows of counts; without binomial coefficients
 * @param options.quadrature from one of the two rules
 * @see Liu and Pierce 1994, Biometrika 81:624-629 (adaptive quadrature); Trefethen and Weideman 2014, SIAM Rev
 *   56:385-458 (trapezoidal rule); Louis 1982, J R Stat Soc B 44:226-233 (information from moments)
 */
export function randomInterceptLikelihood(design: Design, options: { readonly quadrature: Quadrature }): Likelihood {
  const size = design.columns + 1;
  return {
    size,
    penalised: false,
    evaluate(parameters) {
      let value = 0;
      const score = new Float64Array(size);
      const complete = new Float64Array(size * size);
      const observed = new Float64Array(size * size);
      for (let row = 0; row < design.rows; row++) {
        const moments = rowMoments(design, row, parameters, options.quadrature);
        if (!Number.isFinite(moments.value)) return null;
        value += moments.value;
        addRow({ score, complete, observed }, design, row, moments);
      }
      return evaluation(value, score, complete, observed, size);
    },
  };
}

/** Of one row at each node; written over at the next. */
const scratch = {
  logs: new Float64Array(2048),
  residuals: new Float64Array(2048),
  spreads: new Float64Array(2048),
};

/** Log integral of one row, and posterior means of residual r, spread v = n p q, and their products with z. */
interface RowMoments {
  readonly value: number;
  readonly r: number;
  readonly rz: number;
  readonly rr: number;
  readonly rrz: number;
  readonly rrzz: number;
  readonly v: number;
  readonly vz: number;
  readonly vzz: number;
}

function rowMoments(design: Design, row: number, parameters: Float64Array, quadrature: Quadrature): RowMoments {
  const { columns, x, successes, trials } = design;
  const [y, n, tau] = [successes[row]!, trials[row]!, parameters[columns]!];
  let fixed = 0;
  for (let j = 0; j < columns; j++) fixed += x[row * columns + j]! * parameters[j]!;
  const { moved, nodes, logWeights } = y === 0 || y === n ? quadrature.step : quadrature.peak;
  const { mode, width } = moved ? placed(fixed, tau, y, n) : { mode: 0, width: 1 };
  const { logs, residuals, spreads } = scratch;
  let largest = -Infinity;
  for (let q = 0; q < nodes.length; q++) {
    const z = mode + width * nodes[q]!;
    const eta = fixed + tau * z;
    const small = Math.exp(-Math.abs(eta));
    const log = y * eta - n * (Math.max(eta, 0) + Math.log1p(small)) - (z * z) / 2 + logWeights[q]!;
    residuals[q] = y - (eta >= 0 ? n : n * small) / (1 + small);
    spreads[q] = (n * small) / ((1 + small) * (1 + small));
    logs[q] = log;
    largest = Math.max(largest, log);
  }
  let [sum, r, rz, rr, rrz, rrzz, v, vz, vzz] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let q = 0; q < nodes.length; q++) {
    if (logs[q]! < largest - 60) continue;
    const z = mode + width * nodes[q]!;
    const weight = Math.exp(logs[q]! - largest);
    const residual = weight * residuals[q]!;
    const square = residual * residuals[q]!;
    const spread = weight * spreads[q]!;
    sum += weight;
    r += residual;
    rz += residual * z;
    rr += square;
    rrz += square * z;
    rrzz += square * z * z;
    v += spread;
    vz += spread * z;
    vzz += spread * z * z;
  }
  const value = largest + Math.log(sum * width) - LOG_SQRT_TWO_PI;
  return {
    value,
    r: r / sum,
    rz: rz / sum,
    rr: rr / sum,
    rrz: rrz / sum,
    rrzz: rrzz / sum,
    v: v / sum,
    vz: vz / sum,
    vzz: vzz / sum,
  };
}

/** Nodes go about the highest point of the integrand, as wide as its curvature there says. */
function placed(fixed: number, tau: number, y: number, n: number): { readonly mode: number; readonly width: number } {
  const { mode, curvature } = modeOf(fixed, tau, y, n);
  return { mode, width: Math.SQRT2 / Math.sqrt(curvature) };
}

/** Highest point of y eta - n log(1 + e^eta) - z^2 / 2 with eta = fixed + tau z: Newton inside a shrinking bracket. */
function modeOf(
  fixed: number,
  tau: number,
  y: number,
  n: number,
): { readonly mode: number; readonly curvature: number } {
  const slopeAt = (z: number) => {
    const p = 1 / (1 + Math.exp(-(fixed + tau * z)));
    return { slope: tau * (y - n * p) - z, curvature: tau * tau * n * p * (1 - p) + 1 };
  };
  let [low, high] = [Math.min(tau * y, tau * (y - n)), Math.max(tau * y, tau * (y - n))];
  let mode = Math.min(high, Math.max(low, 0));
  for (let iteration = 0; iteration < 200; iteration++) {
    const { slope, curvature } = slopeAt(mode);
    if (slope > 0) low = mode;
    else high = mode;
    const next = mode + slope / curvature;
    if (Math.abs(next - mode) < 1e-12 * Math.max(1, Math.abs(mode))) break;
    mode = next >= low && next <= high ? next : (low + high) / 2;
  }
  return { mode, curvature: slopeAt(mode).curvature };
}

/** Adds the score of a row, the information of its complete data, and the observed information after Louis. */
function addRow(
  sums: { readonly score: Float64Array; readonly complete: Float64Array; readonly observed: Float64Array },
  { columns, x }: Design,
  row: number,
  m: RowMoments,
): void {
  const size = columns + 1;
  const at = (j: number): number => x[row * columns + j]!;
  const add = (j: number, k: number, complete: number, missing: number): void => {
    sums.complete[j * size + k] = sums.complete[j * size + k]! + complete;
    sums.observed[j * size + k] = sums.observed[j * size + k]! + complete - missing;
  };
  for (let j = 0; j < columns; j++) {
    sums.score[j] = sums.score[j]! + m.r * at(j);
    for (let k = 0; k < columns; k++) add(j, k, m.v * at(j) * at(k), (m.rr - m.r ** 2) * at(j) * at(k));
    const [complete, missing] = [m.vz * at(j), (m.rrz - m.r * m.rz) * at(j)];
    add(j, columns, complete, missing);
    add(columns, j, complete, missing);
  }
  sums.score[columns] = sums.score[columns]! + m.rz;
  add(columns, columns, m.vzz, m.rrzz - m.rz ** 2);
}

/**
 * Where the likelihood is not concave, the information of the complete data leads uphill: first for tau alone, whose
 * likelihood bends the other way far out, then for all.
 */
function evaluation(
  value: number,
  score: Float64Array,
  complete: Float64Array,
  observed: Float64Array,
  size: number,
): Evaluation | null {
  const apart = observed.slice();
  const tauAt = size - 1;
  for (let j = 0; j < tauAt; j++) apart[j * size + tauAt] = apart[tauAt * size + j] = 0;
  apart[tauAt * size + tauAt] = complete[tauAt * size + tauAt]!;
  const uphill = [apart, complete];
  for (const curvature of [observed, ...uphill]) {
    const factor = cholesky(curvature, size);
    if (factor === null) continue;
    const inverse = inverseOf(factor);
    return { value, score, inverse, curvature: observed, curvatureInverse: inverse, uphill };
  }
  return null;
}
