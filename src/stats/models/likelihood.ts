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
  /** What to take for the curvature where that is not positive definite over the parameters that move, in turn. */
  readonly uphill?: readonly Float64Array[];
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
  const { rows, columns } = design;
  const fit: Fitted = {
    p: new Float64Array(rows),
    weights: new Float64Array(rows),
    hats: new Float64Array(rows),
  };
  return {
    size: columns,
    penalised: options.penalised,
    evaluate(beta) {
      const { value, information } = firstPass(design, beta, fit);
      const factor = cholesky(information, columns);
      if (factor === null) return null;
      const inverse = inverseOf(factor);
      if (!options.penalised)
        return { value, score: scoreOf(design, fit), inverse, curvature: information, curvatureInverse: inverse };
      const largest = setHats(design, inverse, fit);
      const score = scoreOf(design, fit);
      const penalised = value + factor.logDeterminant / 2;
      // Where no case carries much of the fit the added data change the curvature too little to matter.
      if (largest < 0.05)
        return { value: penalised, score, inverse, curvature: information, curvatureInverse: inverse };
      const curvature = addedCurvature(design, information, fit);
      const curvatureFactor = cholesky(curvature, columns);
      if (curvatureFactor === null) return null;
      return { value: penalised, score, inverse, curvature, curvatureInverse: inverseOf(curvatureFactor) };
    },
  };
}

/** Of each row: fitted probability, weight n p q, hat value; written over at each evaluation. */
interface Fitted {
  readonly p: Float64Array;
  readonly weights: Float64Array;
  readonly hats: Float64Array;
}

function firstPass(
  { rows, columns, x, successes, trials }: Design,
  beta: Float64Array,
  fit: Fitted,
): { readonly value: number; readonly information: Float64Array } {
  const information = new Float64Array(columns * columns);
  let value = 0;
  for (let row = 0, from = 0; row < rows; row++, from += columns) {
    let linear = 0;
    for (let j = 0; j < columns; j++) linear += x[from + j]! * beta[j]!;
    const small = Math.exp(-Math.abs(linear));
    const n = trials[row]!;
    const weight = (n * small) / ((1 + small) * (1 + small));
    fit.p[row] = linear >= 0 ? 1 / (1 + small) : small / (1 + small);
    fit.weights[row] = weight;
    value += successes[row]! * linear - n * (Math.max(linear, 0) + Math.log1p(small));
    addProducts(information, x, from, columns, weight);
  }
  mirror(information, columns);
  return { value, information };
}

/** Adds weight times x x' of one row to the lower triangle. */
function addProducts(sums: Float64Array, x: Float64Array, from: number, columns: number, weight: number): void {
  for (let j = 0; j < columns; j++) {
    const weighted = weight * x[from + j]!;
    const at = j * columns;
    for (let k = 0; k <= j; k++) sums[at + k]! += weighted * x[from + k]!;
  }
}

function mirror(sums: Float64Array, columns: number): void {
  for (let j = 0; j < columns; j++) for (let k = 0; k < j; k++) sums[k * columns + j] = sums[j * columns + k]!;
}

/** Sets the hat value of each row and returns the largest of a single case. */
function setHats({ rows, columns, x, trials }: Design, inverse: Float64Array, fit: Fitted): number {
  let largest = 0;
  for (let row = 0, from = 0; row < rows; row++, from += columns) {
    let sum = 0;
    for (let j = 0; j < columns; j++) {
      const at = j * columns;
      let half = 0.5 * inverse[at + j]! * x[from + j]!;
      for (let k = 0; k < j; k++) half += inverse[at + k]! * x[from + k]!;
      sum += half * x[from + j]!;
    }
    const hat = 2 * sum * fit.weights[row]!;
    fit.hats[row] = hat;
    largest = Math.max(largest, hat / trials[row]!);
  }
  return largest;
}

/** The information of the data with the hat values added to the trials. */
function addedCurvature({ rows, columns, x, trials }: Design, information: Float64Array, fit: Fitted): Float64Array {
  const curvature = information.slice();
  for (let row = 0, from = 0; row < rows; row++, from += columns)
    addProducts(curvature, x, from, columns, (fit.hats[row]! * fit.weights[row]!) / trials[row]!);
  mirror(curvature, columns);
  return curvature;
}

/** Firth's modified score; the plain one while the hat values are 0, which without a penalty they stay. */
function scoreOf({ rows, columns, x, successes, trials }: Design, { p, hats }: Fitted): Float64Array {
  const score = new Float64Array(columns);
  for (let row = 0, from = 0; row < rows; row++, from += columns) {
    const residual = successes[row]! - trials[row]! * p[row]! + hats[row]! * (0.5 - p[row]!);
    for (let j = 0; j < columns; j++) score[j]! += residual * x[from + j]!;
  }
  return score;
}
