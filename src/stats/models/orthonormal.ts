import type { Design } from "./logistic-data.js";

/**
 * The design in other columns that span the same space, orthonormal up to the square root of the number of rows, so that
 * years or millimetres condition a fit no worse than zeros and ones.
 */
export interface OrthonormalDesign {
  readonly design: Design;
  /** Row by row: what each coefficient of the columns as given takes of each parameter. */
  readonly readings: readonly Float64Array[];
  /** Logarithm of what the columns as given lost in size: a penalty by a determinant changes by it. */
  readonly logVolume: number;
}

/**
 * Orthonormal columns by Gram-Schmidt, twice.
 *
 * @param design checked, no column made up by others
 * @see Golub and Van Loan 2013, Matrix Computations, section 5.2.8
 */
export function orthonormal(design: Design): OrthonormalDesign {
  const { rows, columns, scales } = design;
  const x = design.x.slice();
  // The columns as given are the orthonormal ones times this upper triangle.
  const upper = new Float64Array(columns * columns);
  let logVolume = 0;
  for (let j = 0; j < columns; j++) {
    for (let pass = 0; pass < 2; pass++)
      for (let before = 0; before < j; before++) {
        let along = 0;
        for (let at = 0; at < x.length; at += columns) along += x[at + j]! * x[at + before]!;
        along /= rows;
        for (let at = 0; at < x.length; at += columns) x[at + j]! -= along * x[at + before]!;
        upper[before * columns + j]! += along;
      }
    let squares = 0;
    for (let at = j; at < x.length; at += columns) squares += x[at]! ** 2;
    const length = Math.sqrt(squares / rows);
    for (let at = j; at < x.length; at += columns) x[at]! /= length;
    upper[j * columns + j] = length;
    logVolume += Math.log(length * scales[j]!);
  }
  const readings = Array.from({ length: columns }, (_, j) =>
    inverseRow(upper, columns, j).map((value) => value / scales[j]!),
  );
  return { design: { ...design, x }, readings, logVolume };
}

/** One row of the inverse of an upper triangle. */
function inverseRow(upper: Float64Array, size: number, row: number): Float64Array {
  const inverse = new Float64Array(size);
  for (let j = row; j < size; j++) {
    let sum = j === row ? 1 : 0;
    for (let k = row; k < j; k++) sum -= inverse[k]! * upper[k * size + j]!;
    inverse[j] = sum / upper[j * size + j]!;
  }
  return inverse;
}

/** The same space reflected so that one coefficient is the last parameter over `scale`. */
export interface Reflected {
  readonly design: Design;
  readonly scale: number;
  /** Parameters of the orthonormal design as parameters of this one. */
  readonly reflect: (parameters: Float64Array) => Float64Array;
}

/**
 * Turns an orthonormal design so that holding its last parameter holds one coefficient of the columns as given.
 *
 * @param reading of that coefficient
 * @see Golub and Van Loan 2013, Matrix Computations, section 5.1.3 (Householder vector)
 */
export function withLast({ design }: OrthonormalDesign, reading: Float64Array): Reflected {
  const { rows, columns } = design;
  const length = Math.hypot(...reading);
  const last = columns - 1;
  const unit = reading.map((value) => value / length);
  const rest = unit.subarray(0, last).reduce((sum, value) => sum + value * value, 0);
  // e - unit, its last element 1 - unit[last] without cancellation.
  const vector = unit.map((value) => -value);
  vector[last] = unit[last]! > 0 ? rest / (1 + unit[last]!) : 1 - unit[last]!;
  const square = rest + vector[last]! ** 2;
  const reflectAt = (values: Float64Array, from: number): void => {
    let along = 0;
    for (let j = 0; j < columns; j++) along += values[from + j]! * vector[j]!;
    along *= square === 0 ? 0 : 2 / square;
    for (let j = 0; j < columns; j++) values[from + j]! -= along * vector[j]!;
  };
  const x = design.x.slice();
  for (let row = 0; row < rows; row++) reflectAt(x, row * columns);
  return {
    design: { ...design, x },
    scale: 1 / length,
    reflect: (parameters) => {
      const turned = parameters.slice();
      reflectAt(turned, 0);
      return turned;
    },
  };
}
