import type { CountRow } from "../count-rows.js";
import type { CardUnit, PaperCard } from "./paper-card.js";

/** Our own series as a card, from its counts; the definition of success is ours. */
export function ownCard(
  rows: readonly CountRow[],
  about: { readonly name: string; readonly unit: CardUnit; readonly definition: string; readonly lost: number },
): PaperCard {
  const { name, unit, definition, lost } = about;
  return {
    name,
    unit,
    definition,
    match: "same as ours",
    followUp: null,
    lost,
    complications: null,
    rows: rows.map(({ grade, technique, successes, cases }) => ({
      grade: grade ?? "not recorded",
      technique: technique ?? "not recorded",
      successes,
      cases,
    })),
  };
}
