import {
  caseSeriesItems,
  indexItems,
  unanswered,
  type Appraisal,
  type AppraisalItem,
  type Periods,
} from "../../findings/appraisal/appraisal.js";
import { appraisalHints } from "../../findings/appraisal/appraisal-hints.js";
import type { CardFindings } from "../../findings/series/series-findings.js";
import type { Section, TextTable } from "../text.js";
import { caseSeriesGroup, indexGroup, itemWords } from "./appraisal-words.js";
import { hintText } from "./hint-text.js";

export interface AppraisalOptions {
  readonly answers: Appraisal;
  readonly periods: Periods;
  readonly level: number;
}

/** The appraisal of one paper as people answered it: item by item, never added up. */
export function appraisalSection(chosen: CardFindings | null, { answers, periods, level }: AppraisalOptions): Section {
  const hints = appraisalHints(chosen, periods, level);
  const line = (item: AppraisalItem): string[] => {
    const { verdict, page, quotation } = answers[item] ?? unanswered;
    return [itemWords[item], verdict || "not answered", page, quotation, hintText(item, hints)];
  };
  const table = (caption: string, items: readonly AppraisalItem[]): TextTable => ({
    caption,
    head: ["Question", "Answer", "Page", "Quotation", "What the counts say"],
    rows: items.map(line),
    notes: [],
  });
  const all = [...indexItems, ...caseSeriesItems];
  const done = all.filter((item) => (answers[item] ?? unanswered).verdict !== "").length;
  return {
    id: "appraisal",
    question: "How was it done?",
    answer: [
      [`${chosen?.card.name ?? "No series"}: ${done} of ${all.length} questions answered, by people, not by the kit.`],
    ],
    cautions: [["The answers are not added up: a sum would hide which of them matters here."]],
    tables: [table(indexGroup, indexItems), table(caseSeriesGroup, caseSeriesItems)],
  };
}
