/** Scores 1, 2, 3, ... for so many ordered categories. */
export function consecutiveScores(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i + 1);
}

/** Throws unless there is one finite score a category. */
export function requireScores(caller: string, name: string, scores: readonly number[], categories: number): void {
  if (scores.length !== categories)
    throw new RangeError(`${caller}: ${name} must hold one score a category (${categories}), got ${scores.length}`);
  scores.forEach((score, i) => {
    if (!Number.isFinite(score)) throw new RangeError(`${caller}: ${name}[${i}] must be a finite number, got ${score}`);
  });
}
