import type { Design } from "./logistic-data.js";

/**
 * The design in other columns that span the same space, orthonormal up to the square root of the number of rows, so that
 * years or millimetres condition a fit no worse than zeros and ones. The column asked for comes last: its coefficient is
 * the last parameter over `scale`, so that holding one holds the other.
 */
export interface OrthonormalDesign {
  readonly design: Design;
  readonly scale: number;
  /** Logarithm of what the columns as given lost in size: a penalty by a determinant changes by it. */
  readonly logVolume: number;
  /** The parameters that give the same linear predictor as coefficients of the columns as given. */
  readonly parametersOf: (linear: Float64Array) => Float64Array;
}

/**
 * Orthonormal columns by Gram-Schmidt, twice, one column of the design last.
 *
 * @param design checked, no column made up by others
 * @param last index of the column that comes last
 * @see Golub and Van Loan 2013, Matrix Computations, section 5.2.8
 */
export function orthonormal(design: Design, last: number): OrthonormalDesign {
  const { rows, columns } = design;
  const order = Array.from({ length: columns }, (_, j) => j).filter((j) => j !== last);
  const x = new Float64Array(rows * columns);
  let [scale, logVolume] = [1, 0];
  [...order, last].forEach((from, to) => {
    for (let row = 0; row < rows; row++) x[row * columns + to] = design.x[row * columns + from]!;
    for (let pass = 0; pass < 2; pass++)
      for (let before = 0; before < to; before++) {
        let along = 0;
        for (let at = 0; at < x.length; at += columns) along += x[at + to]! * x[at + before]!;
        for (let at = 0; at < x.length; at += columns) x[at + to]! -= (along / rows) * x[at + before]!;
      }
    let squares = 0;
    for (let at = to; at < x.length; at += columns) squares += x[at]! ** 2;
    scale = Math.sqrt(squares / rows);
    logVolume += Math.log(scale * design.scales[from]!);
    for (let at = to; at < x.length; at += columns) x[at]! /= scale;
  });
  return {
    design: { ...design, x },
    // What was left of the last column, in the units of the column as given.
    scale: scale * design.scales[last]!,
    logVolume,
    parametersOf: (linear) => {
      const parameters = new Float64Array(columns);
      for (let row = 0; row < rows; row++)
        for (let j = 0; j < columns; j++) parameters[j]! += (linear[row]! * x[row * columns + j]!) / rows;
      return parameters;
    },
  };
}

/** Linear predictor of each row. */
export function linearPredictor({ rows, columns, x }: Design, parameters: Float64Array): Float64Array {
  const linear = new Float64Array(rows);
  for (let row = 0; row < rows; row++)
    for (let j = 0; j < columns; j++) linear[row]! += x[row * columns + j]! * parameters[j]!;
  return linear;
}
