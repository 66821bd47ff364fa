import type { CountRow } from "../count-rows.js";
import type { Findings } from "../types.js";
import { blankCard, type CardUnit, type PaperCard } from "./paper-card.js";

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

/** Our own series as a card from its findings: counts by grade, cases lost, the success rule in words. */
export function cardOfFindings(findings: Findings, name: string): PaperCard {
  const rows = findings.howOften.byGrade.map(({ grade, rate: { count } }) => ({
    grade,
    technique: "",
    successes: count.successes,
    cases: count.trials,
  }));
  const unit = findings.unit === "child" ? "children" : "limbs";
  const lost = findings.missing.lost.length + findings.missing.notRecorded.length;
  return { ...blankCard(name, []), unit, definition: findings.success.says, match: "same as ours", lost, rows };
}
