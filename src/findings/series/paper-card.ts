/** What a count counts, in the words of the house. */
export const cardUnits = ["limbs", "children", "not stated"] as const;
export type CardUnit = (typeof cardUnits)[number];

/** How a paper's definition of success stands to ours. */
export const definitionMatches = ["same as ours", "different", "not stated"] as const;
export type DefinitionMatch = (typeof definitionMatches)[number];

/** One line of a card: counts of a grade, or of one technique of it; null where the paper does not state them. */
export interface CardRow {
  readonly grade: string;
  /** Empty when techniques are not told apart. */
  readonly technique: string;
  readonly successes: number | null;
  readonly cases: number | null;
}

/** A published series as typed from its paper; null is "not stated". */
export interface PaperCard {
  readonly name: string;
  readonly unit: CardUnit;
  readonly definition: string | null;
  readonly match: DefinitionMatch;
  readonly followUp: string | null;
  /** Eligible cases whose outcome is missing. */
  readonly lost: number | null;
  readonly complications: string | null;
  readonly rows: readonly CardRow[];
}

/** A card with nothing stated, one line a grade. */
export function blankCard(name: string, grades: readonly string[]): PaperCard {
  const rows = grades.map((grade): CardRow => ({ grade, technique: "", successes: null, cases: null }));
  return {
    name,
    unit: "not stated",
    definition: null,
    match: "not stated",
    followUp: null,
    lost: null,
    complications: null,
    rows,
  };
}
