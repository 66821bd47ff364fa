/** Lower triangle L with L L' = A, row by row. */
export interface Cholesky {
  readonly size: number;
  readonly lower: Float64Array;
  readonly logDeterminant: number;
}

/**
 * Cholesky factor of a symmetric matrix, or null when it is not positive definite.
 *
 * @param matrix row by row, size * size
 * @see Golub and Van Loan 2013, Matrix Computations, section 4.2
 * @example cholesky(new Float64Array([4, 0, 0, 9]), 2).lower // => { 0: 2, 1: 0, 2: 0, 3: 3 }
 */
export function cholesky(matrix: Float64Array, size: number): Cholesky | null {
  const lower = new Float64Array(size * size);
  let logDeterminant = 0;
  for (let column = 0; column < size; column++) {
    let square = matrix[column * size + column]!;
    for (let k = 0; k < column; k++) square -= lower[column * size + k]! ** 2;
    if (!(square > 0)) return null;
    const pivot = Math.sqrt(square);
    lower[column * size + column] = pivot;
    logDeterminant += 2 * Math.log(pivot);
    for (let row = column + 1; row < size; row++) {
      let sum = matrix[row * size + column]!;
      for (let k = 0; k < column; k++) sum -= lower[row * size + k]! * lower[column * size + k]!;
      lower[row * size + column] = sum / pivot;
    }
  }
  return { size, lower, logDeterminant };
}

/** Inverse of the matrix that was factored, row by row. */
export function inverseOf({ size, lower }: Cholesky): Float64Array {
  const half = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    half[column * size + column] = 1 / lower[column * size + column]!;
    for (let row = column + 1; row < size; row++) {
      let sum = 0;
      for (let k = column; k < row; k++) sum -= lower[row * size + k]! * half[k * size + column]!;
      half[row * size + column] = sum / lower[row * size + row]!;
    }
  }
  const inverse = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < size; k++) sum += half[k * size + i]! * half[k * size + j]!;
      inverse[i * size + j] = inverse[j * size + i] = sum;
    }
  return inverse;
}
