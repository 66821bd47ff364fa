import type { OpenCases } from "../../src/notebook/case-dialog.js";
import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import type { PageHead } from "../../src/notebook/page-shell.js";
import { questionList } from "../../src/notebook/question-list.js";
import type { SuccessKind } from "../../src/plan/types.js";
import { headLine } from "../../src/report/head-line.js";
import { plainText } from "../../src/report/text.js";
import type { CaseSeries, Page } from "./case-series.js";

export interface PageOfQuestionsOptions {
  readonly open: OpenCases;
  readonly tipOf: (id: string) => string | undefined;
  readonly say: (message: string) => void;
  readonly tell: (message: string) => void;
}

/** The questions of the page in reading order, and the controls that redraw them all. */
export function pageOfQuestions(notebook: Notebook<CaseSeries>, options: PageOfQuestionsOptions) {
  const level = levelSlider(0.95, (value) => notebook.set("level", value));
  const rule = element("div");
  notebook.observe("plan", {
    fulfilled: ({ plan }) => {
      const rules = plan.success.map(({ kind, says }) => ({ value: kind, text: `${kind}: ${says}` }));
      const changed = (kind: string): void => notebook.set("success", kind as SuccessKind);
      rule.replaceChildren(choice("Success", rules, plan.primary, changed, { id: "success-rule" }));
    },
    rejected: () => rule.replaceChildren(),
  });
  const { tell, ...listed } = options;
  const list = questionList({
    ...listed,
    controlsOf: (id) => (id === "how-often" ? [level.node, rule] : []),
    // The answer sends the reader to the list of failures.
    tablesOpenIn: ["wrong"],
  });
  return {
    node: list.node,
    /** Shows the page, or nothing while there is none. */
    show(page: Page | null): void {
      list.node.hidden = page === null;
      if (page === null) return;
      list.show(page.sections, page.pictures);
      const first = page.sections.find(({ id }) => id === "how-often");
      if (first) tell(first.answer.map(plainText).join(" "));
    },
    headOf({ findings }: Page): PageHead {
      const { successes, trials } = findings.howOften.overall.count;
      return { over: String(successes), under: String(trials), title: findings.plan.title, line: headLine(findings) };
    },
  };
}
