import { cholesky, inverseOf } from "./cholesky.js";
import type { Design } from "./logistic-data.js";

/** A log likelihood at one point; matrices row by row. */
export interface Evaluation {
  readonly value: number;
  readonly score: Float64Array;
  /** Inverse of the Fisher information. */
  readonly inverse: Float64Array;
  /** How the score falls with the parameters, nearly: the Fisher information, with a penalty that of the data it adds. */
  readonly curvature: Float64Array;
  readonly curvatureInverse: Float64Array;
}

/** A log likelihood of `size` parameters; null where its information cannot be inverted. */
export interface Likelihood {
  readonly size: number;
  readonly penalised: boolean;
  readonly evaluate: (beta: Float64Array) => Evaluation | null;
}

/**
 * Log likelihood of a logistic model, each case for itself (no binomial coefficients), plain or with Firth's penalty of
 * half the log determinant of the Fisher information.
 *
 * Firth's score is that of data to which each case adds half its hat value to the successes and all of it to the trials;
 * scoring with the information of those data converges even where the model is saturated, which plain scoring does not.
 *
 * @see Firth 1993, Biometrika 80:27-38; Heinze and Schemper 2002, Stat Med 21:2409-2419, equation 2
 */
export function logisticLikelihood(design: Design, options: { readonly penalised: boolean }): Likelihood {
  const { rows, columns, x, successes, trials } = design;
  const fitted = new Float64Array(rows);
  const spread = new Float64Array(rows);
  const weights = new Float64Array(rows);
  return {
    size: columns,
    penalised: options.penalised,
    evaluate(beta) {
      let value = 0;
      for (let row = 0, from = 0; row < rows; row++, from += columns) {
        let linear = 0;
        for (let j = 0; j < columns; j++) linear += x[from + j]! * beta[j]!;
        const small = Math.exp(-Math.abs(linear));
        fitted[row] = linear >= 0 ? 1 / (1 + small) : small / (1 + small);
        spread[row] = small / (1 + small) ** 2;
        weights[row] = trials[row]! * spread[row]!;
        value += successes[row]! * linear - trials[row]! * (Math.max(linear, 0) + Math.log1p(small));
      }
      const information = crossProducts(design, weights);
      const factor = cholesky(information, columns);
      if (factor === null) return null;
      const inverse = inverseOf(factor);
      if (!options.penalised) {
        const score = scoreOf(design, fitted, null);
        return { value, score, inverse, curvature: information, curvatureInverse: inverse };
      }
      const hats = hatValues(design, weights, inverse);
      for (let row = 0; row < rows; row++) weights[row] = (trials[row]! + hats[row]!) * spread[row]!;
      const curvature = crossProducts(design, weights);
      const curvatureFactor = cholesky(curvature, columns);
      if (curvatureFactor === null) return null;
      const score = scoreOf(design, fitted, hats);
      value += factor.logDeterminant / 2;
      return { value, score, inverse, curvature, curvatureInverse: inverseOf(curvatureFactor) };
    },
  };
}

/** Sum over the rows of weight times x x'. */
function crossProducts({ rows, columns, x }: Design, weights: Float64Array): Float64Array {
  const sums = new Float64Array(columns * columns);
  for (let row = 0, from = 0; row < rows; row++, from += columns)
    for (let j = 0; j < columns; j++) {
      const weighted = weights[row]! * x[from + j]!;
      const at = j * columns;
      for (let k = 0; k <= j; k++) sums[at + k] = sums[at + k]! + weighted * x[from + k]!;
    }
  for (let j = 0; j < columns; j++) for (let k = 0; k < j; k++) sums[k * columns + j] = sums[j * columns + k]!;
  return sums;
}

function hatValues({ rows, columns, x }: Design, weights: Float64Array, inverse: Float64Array): Float64Array {
  const hats = new Float64Array(rows);
  for (let row = 0, from = 0; row < rows; row++, from += columns) {
    let sum = 0;
    for (let j = 0; j < columns; j++) {
      let half = 0.5 * inverse[j * columns + j]! * x[from + j]!;
      for (let k = 0; k < j; k++) half += inverse[j * columns + k]! * x[from + k]!;
      sum += half * x[from + j]!;
    }
    hats[row] = 2 * sum * weights[row]!;
  }
  return hats;
}

function scoreOf(
  { rows, columns, x, successes, trials }: Design,
  fitted: Float64Array,
  hats: Float64Array | null,
): Float64Array {
  const score = new Float64Array(columns);
  for (let row = 0, from = 0; row < rows; row++, from += columns) {
    const p = fitted[row]!;
    const residual = successes[row]! - trials[row]! * p + (hats === null ? 0 : hats[row]! * (0.5 - p));
    for (let j = 0; j < columns; j++) score[j] = score[j]! + residual * x[from + j]!;
  }
  return score;
}
