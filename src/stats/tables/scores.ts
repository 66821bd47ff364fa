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

/**
 * Scores divided by the largest of them: statistics of score tests do not depend on their unit, and squares of very
 * large ones would overflow.
 */
export function scaledScores(scores: readonly number[]): number[] {
  const largest = scores.reduce((most, score) => Math.max(most, Math.abs(score)), 0);
  return largest === 0 ? [...scores] : scores.map((score) => score / largest);
}

/** Scores less their mean over the cases; exactly 0 where all cases have one score, whatever the mean's rounding. */
export function deviations(scores: readonly number[], counts: readonly number[]): number[] {
  const used = scores.filter((_, i) => counts[i]! > 0);
  if (used.every((score) => score === used[0])) return scores.map(() => 0);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const mean = counts.reduce((sum, count, i) => sum + (count / total) * scores[i]!, 0);
  return scores.map((score) => score - mean);
}
