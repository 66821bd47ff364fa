/**
 * Solution of a system whose symmetric matrix is positive definite, or null when it is not, to rounding.
 *
 * @param matrix rows
 * @param right right-hand side
 * @see Golub and Van Loan 2013, Matrix Computations, section 4.2 (Cholesky)
 * @example solvePositive([[4, 0], [0, 9]], [8, 27]) // => [2, 3]
 */
export function solvePositive(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const size = right.length;
  const lower = matrix.map((row) => [...row]);
  for (let j = 0; j < size; j++) {
    for (let k = 0; k < j; k++) lower[j]![j]! -= lower[j]![k]! ** 2;
    if (!(lower[j]![j]! > 1e-12 * Math.max(matrix[j]![j]!, Number.MIN_VALUE))) return null;
    lower[j]![j] = Math.sqrt(lower[j]![j]!);
    for (let i = j + 1; i < size; i++) {
      for (let k = 0; k < j; k++) lower[i]![j]! -= lower[i]![k]! * lower[j]![k]!;
      lower[i]![j]! /= lower[j]![j]!;
    }
  }
  const solution = [...right];
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) solution[i]! -= lower[i]![k]! * solution[k]!;
    solution[i]! /= lower[i]![i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) solution[i]! -= lower[k]![i]! * solution[k]!;
    solution[i]! /= lower[i]![i]!;
  }
  return solution;
}
