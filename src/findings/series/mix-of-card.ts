import type { PaperCard } from "./paper-card.js";
import type { GivenMix } from "./series-findings.js";

/** The grade mix of one series, to bring the others to; undefined when it states no cases. */
export function mixOfCard(cards: readonly PaperCard[], name: string): GivenMix | undefined {
  const card = cards.find((one) => one.name === name);
  if (card === undefined) return undefined;
  const grades = [...new Set(cards.flatMap(({ rows }) => rows.map(({ grade }) => grade)))];
  const weights = grades.map((grade) => ({
    grade,
    weight: card.rows.filter((row) => row.grade === grade).reduce((sum, { cases }) => sum + (cases ?? 0), 0),
  }));
  return weights.some(({ weight }) => weight > 0) ? { of: name, weights } : undefined;
}
