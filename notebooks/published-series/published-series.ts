import { seriesPictures } from "../../src/charts/pictures/series/series-pictures.js";
import type { SectionPicture } from "../../src/charts/section-pictures.js";
import type { PaperCard } from "../../src/findings/series/paper-card.js";
import { seriesFindings, type GivenMix, type SeriesFindings } from "../../src/findings/series/series-findings.js";
import { cellsOf } from "../../src/notebook/cells.js";
import { seriesSections } from "../../src/report/series/series-sections.js";
import type { Section } from "../../src/report/text.js";
import { mixOfCard } from "../../src/findings/series/mix-of-card.js";

/** Whose grade mix all series are brought to: that of all together, of one of them by its name, or one's own. */
export type MixChoice =
  { readonly kind: "all" } | { readonly kind: "series"; readonly name: string } | { readonly kind: "own" };

export interface PublishedSeries {
  cards: readonly PaperCard[];
  /** Printed under every picture. */
  note: string;
  level: number;
  mixChoice: MixChoice;
  /** Weights by grade when the mix is one's own. */
  ownWeights: Readonly<Record<string, number>>;
  pool: boolean;
  /** How many further cases are looked at. */
  next: number;
  /** Null: that of all series together. */
  mix: GivenMix | null;
  findings: SeriesFindings;
  sections: readonly Section[];
  pictures: readonly SectionPicture[];
}

const cell = cellsOf<PublishedSeries>();

/** The notebook, starting from the cards given. */
export const publishedSeries = (cards: readonly PaperCard[], note: string) => [
  cell("cards", [], () => cards),
  cell("note", [], () => note),
  cell("level", [], () => 0.95),
  cell("mixChoice", [], () => ({ kind: "all" }) as const),
  cell("ownWeights", [], () => ({})),
  cell("pool", [], () => false),
  cell("next", [], () => 20),
  cell("mix", ["cards", "mixChoice", "ownWeights"], (all, choice, weights) => {
    if (choice.kind === "all") return null;
    if (choice.kind === "series") return mixOfCard(all, choice.name) ?? null;
    const grades = [...new Set(all.flatMap(({ rows }) => rows.map(({ grade }) => grade)))];
    return { of: "your own choice", weights: grades.map((grade) => ({ grade, weight: weights[grade] ?? 1 })) };
  }),
  cell("findings", ["cards", "level", "mix", "pool", "next"], (all, level, mix, pool, next) =>
    seriesFindings(all, { level, pool, next, ...(mix === null ? {} : { mix }) }),
  ),
  cell("sections", ["findings"], (findings) => seriesSections(findings)),
  cell("pictures", ["findings", "note"], (findings, said) => seriesPictures(findings, said)),
];
