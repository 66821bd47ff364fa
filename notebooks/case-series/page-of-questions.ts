import type { OpenCases } from "../../src/notebook/case-dialog.js";
import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import type { PageHead } from "../../src/notebook/page-shell.js";
import { questionSection, type QuestionSection } from "../../src/notebook/question-section.js";
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
  const node = element("div");
  const shown = new Map<string, QuestionSection>();
  const level = levelSlider(0.95, (value) => notebook.set("level", value));
  const rule = element("div");
  const said = async (work: () => void | Promise<void>, message: string): Promise<void> => {
    try {
      await work();
      options.say(message);
    } catch (error) {
      options.say(`Not done: ${(error as Error).message}`);
    }
  };
  notebook.observe("plan", {
    fulfilled: ({ plan }) => {
      const rules = plan.success.map(({ kind, says }) => ({ value: kind, text: `${kind}: ${says}` }));
      const changed = (kind: string): void => notebook.set("success", kind as SuccessKind);
      rule.replaceChildren(choice("Success", rules, plan.primary, changed, { id: "success-rule" }));
    },
    rejected: () => rule.replaceChildren(),
  });
  return {
    node,
    /** Shows the page, or nothing while there is none. */
    show(page: Page | null): void {
      node.hidden = page === null;
      for (const section of page?.sections ?? []) {
        const controls = section.id === "how-often" ? [level.node, rule] : [];
        let held = shown.get(section.id);
        if (!held) {
          held = questionSection(section.id, section.question, {
            ...options,
            said,
            controls,
            // The answer sends the reader to the list of failures.
            ...(section.id === "wrong" ? { tablesOpen: true } : {}),
          });
          shown.set(section.id, held);
          node.append(held.node);
        }
        held.show(
          section,
          page!.pictures.filter((picture) => picture.section === section.id),
        );
        if (section.id === "how-often") options.tell(section.answer.map(plainText).join(" "));
      }
    },
    headOf({ findings }: Page): PageHead {
      const { successes, trials } = findings.howOften.overall.count;
      return { over: String(successes), under: String(trials), title: findings.plan.title, line: headLine(findings) };
    },
  };
}
