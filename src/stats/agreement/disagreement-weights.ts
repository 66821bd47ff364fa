/** How much two different grades disagree: any difference alike, by grades apart, by their square, or as given. */
export const namedWeights = ["unweighted", "linear", "quadratic"] as const;
export type NamedWeights = (typeof namedWeights)[number];
export type AgreementWeights = NamedWeights | { readonly disagreement: readonly (readonly number[])[] };

/**
 * Disagreement weights for a number of ordered grades: 0 on the diagonal, larger for worse disagreement.
 *
 * Named weights are whole numbers (1, grades apart, grades apart squared), so that sums of counts stay exact; agreement
 * weights are 1 less these divided by the largest. Given weights need not be symmetric (Cohen 1968).
 *
 * @throws RangeError when given weights are not square of that size, negative, not 0 on the diagonal or all 0
 * @throws TypeError for an unknown name
 * @see Cohen 1968, Psychol Bull 70:213-220
 * @example disagreementWeights("kappa", 3, "quadratic") // => [[0, 1, 4], [1, 0, 1], [4, 1, 0]]
 */
export function disagreementWeights(caller: string, size: number, weights: AgreementWeights): readonly number[][] {
  if (typeof weights === "string") {
    if (!namedWeights.includes(weights))
      throw new TypeError(`${caller}: weights must be one of ${namedWeights.join(", ")}, got "${String(weights)}"`);
    const power = { unweighted: 0, linear: 1, quadratic: 2 }[weights];
    return square(size, (i, j) => (i === j ? 0 : Math.abs(i - j) ** power));
  }
  return checked(caller, size, weights.disagreement);
}

function checked(caller: string, size: number, given: readonly (readonly number[])[]): number[][] {
  if (given.length !== size || given.some((row) => row.length !== size))
    throw new RangeError(`${caller}: weights must be ${size} by ${size}, like the table`);
  given.forEach((row, i) =>
    row.forEach((weight, j) => {
      if (!(Number.isFinite(weight) && weight >= 0 && (i !== j || weight === 0)))
        throw new RangeError(
          `${caller}: weight in row ${i + 1}, column ${j + 1} must be ${i === j ? "0" : "at least 0"}, got ${weight}`,
        );
    }),
  );
  if (size > 1 && given.every((row) => row.every((weight) => weight === 0)))
    throw new RangeError(`${caller}: at least one weight must be above 0`);
  return given.map((row) => [...row]);
}

function square(size: number, cell: (i: number, j: number) => number): number[][] {
  return Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => cell(i, j)));
}
