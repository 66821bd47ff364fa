import type { BandedRate, CardFindings } from "../series/series-findings.js";
import type { CardRow } from "../series/paper-card.js";
import { bandedRate } from "../club/banded-rate.js";
import type { Periods } from "./appraisal.js";

/** What counts alone say to an item; the answer stays with the person. */
export interface AppraisalHints {
  /** Lost of all eligible; null when the paper does not state both. */
  readonly loss: BandedRate | null;
  /** Whole years in which both groups were treated, and in either; null while a period is not given. */
  readonly overlap: { readonly shared: number; readonly all: number } | null;
  /** Cases of each grade by technique; null when the card tells no two techniques apart. */
  readonly baseline:
    | readonly {
        readonly technique: string;
        readonly grades: readonly { readonly grade: string; readonly share: BandedRate }[];
      }[]
    | null;
}

export function appraisalHints(one: CardFindings | null, periods: Periods, level: number): AppraisalHints {
  if (one === null) return { loss: null, overlap: overlapOf(periods), baseline: null };
  const { card, crude } = one;
  const all = crude.estimate === null || card.lost === null ? 0 : crude.cases + card.lost;
  return {
    loss: all === 0 ? null : bandedRate(card.lost!, all, level),
    overlap: overlapOf(periods),
    baseline: baselineOf(card.rows, level),
  };
}

function overlapOf({ first, second }: Periods): AppraisalHints["overlap"] {
  if (first === null || second === null || first.to < first.from || second.to < second.from) return null;
  const shared = Math.min(first.to, second.to) - Math.max(first.from, second.from) + 1;
  const years = (period: { from: number; to: number }): number => period.to - period.from + 1;
  const both = Math.max(0, shared);
  return { shared: both, all: years(first) + years(second) - both };
}

function baselineOf(rows: readonly CardRow[], level: number): AppraisalHints["baseline"] {
  const techniques = [...new Set(rows.map(({ technique }) => technique))].filter((name) => name !== "");
  if (techniques.length < 2 || rows.some(({ cases }) => cases === null)) return null;
  const grades = [...new Set(rows.map(({ grade }) => grade))];
  const cases = (technique: string, grade?: string): number =>
    rows
      .filter((row) => row.technique === technique && (grade === undefined || row.grade === grade))
      .reduce((sum, row) => sum + row.cases!, 0);
  const counted = techniques.filter((technique) => cases(technique) > 0);
  if (counted.length < 2) return null;
  return counted.map((technique) => ({
    technique,
    grades: grades.map((grade) => ({ grade, share: bandedRate(cases(technique, grade), cases(technique), level) })),
  }));
}
