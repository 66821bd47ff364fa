/**
 * x' M^- x of a symmetric, positive semidefinite matrix, with its rank: elimination with the largest pivot first, what
 * is left when the pivots vanish being a combination of the rest.
 */
export function quadraticForm(
  x: readonly number[],
  matrix: readonly (readonly number[])[],
): { readonly value: number; readonly rank: number } {
  const left = matrix.map((row) => [...row]);
  const vector = [...x];
  const open = new Set(vector.keys());
  const smallest = 1e-10 * Math.max(...left.map((row, i) => row[i]!));
  let [value, rank] = [0, 0];
  while (open.size > 0) {
    let pivot = -1;
    for (const i of open) if (pivot < 0 || left[i]![i]! > left[pivot]![pivot]!) pivot = i;
    const size = left[pivot]![pivot]!;
    if (!(size > smallest)) break;
    open.delete(pivot);
    rank++;
    value += vector[pivot]! ** 2 / size;
    for (const i of open) {
      const factor = left[i]![pivot]! / size;
      vector[i]! -= factor * vector[pivot]!;
      for (const j of open) left[i]![j]! -= factor * left[pivot]![j]!;
    }
  }
  return { value, rank };
}
