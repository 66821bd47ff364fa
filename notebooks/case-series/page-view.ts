import type { CaseCard, Findings } from "../../src/findings/types.js";
import type { PageHead } from "../../src/notebook/page-shell.js";
import { headLine } from "../../src/report/head-line.js";
import { boundedSection } from "../../src/report/bounded-section.js";
import type { Section, Span } from "../../src/report/text.js";
import type { SectionPicture } from "../../src/charts/section-pictures.js";
import type { Page } from "./case-series.js";

/** A picture without its drawing, which is asked for when it is in sight. */
export type ShownPicture = Omit<SectionPicture, "drawing">;

/** What the page shows of the questions; never longer than it can draw, however many the cases. */
export interface PageView {
  readonly head: PageHead;
  readonly sections: readonly Section[];
  readonly pictures: readonly ShownPicture[];
  /** Of the cases that the numbers of the sections list. */
  readonly cards: readonly CaseCard[];
}

/** Cases listed under a number, and rows of a table, that are drawn; the saved tables have all. */
const most = { cases: 200, rows: 200 };

export function pageView({ findings, sections, pictures }: Page): PageView {
  const shown = sections.map((section) => boundedSection(section, most));
  const { successes, trials } = findings.howOften.overall.count;
  return {
    head: { over: String(successes), under: String(trials), title: findings.plan.title, line: headLine(findings) },
    sections: shown,
    pictures: pictures.map(withoutDrawing),
    cards: cardsOf(findings, new Set(shown.flatMap(listed))),
  };
}

function withoutDrawing({ section, name, title, description, caption }: SectionPicture): ShownPicture {
  return { section, name, title, description, caption };
}

/** Of the cases with these numbers, in the order of the sheet. */
export function cardsOf({ cases }: Findings, ids: ReadonlySet<string>): CaseCard[] {
  return cases.filter(({ id }) => ids.has(id));
}

function listed({ answer, cautions, tables }: Section): readonly string[] {
  const spans: Span[] = [...answer, ...cautions, ...tables.flatMap(({ rows }) => rows)].flat();
  return spans.flatMap((span) => (typeof span === "string" ? [] : span.cases));
}
