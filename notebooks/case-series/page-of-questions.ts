import type { Drawing } from "../../src/charts/drawing.js";
import type { CaseCard } from "../../src/findings/types.js";
import type { OpenCases } from "../../src/notebook/case-dialog.js";
import { ended } from "../../src/notebook/call-apart.js";
import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import { questionList } from "../../src/notebook/question-list.js";
import type { SuccessKind } from "../../src/plan/types.js";
import { plainText } from "../../src/report/text.js";
import type { PageView } from "./page-view.js";
import type { SheetDesk } from "./sheet-desk.js";

export interface PageOfQuestionsOptions {
  readonly open: OpenCases;
  /** Told of the cases that a drawing shows. */
  readonly met: (cards: readonly CaseCard[]) => void;
  readonly tipOf: (id: string) => string | undefined;
  readonly say: (message: string) => void;
  readonly tell: (message: string) => void;
}

/** The questions of the page in reading order, and the controls that redraw them all. */
export function pageOfQuestions(desk: SheetDesk, options: PageOfQuestionsOptions) {
  const level = levelSlider(0.95, (value) => desk.set({ level: value }));
  const rule = element("div");
  desk.observe("plan", {
    fulfilled: ({ plan }) => {
      const rules = plan.success.map(({ kind, says }) => ({ value: kind, text: `${kind}: ${says}` }));
      const changed = (kind: string): void => desk.set({ success: kind as SuccessKind });
      rule.replaceChildren(choice("Success", rules, plan.primary, changed, { id: "success-rule" }));
    },
    rejected: () => rule.replaceChildren(),
  });
  const { tell, met, ...listed } = options;
  const drawing = async (name: string, width?: number): Promise<Drawing | null> => {
    try {
      const drawn = await desk.call("draw", { name, ...(width === undefined ? {} : { width }) });
      if (drawn !== null) met(drawn.cards);
      return drawn?.drawing ?? null;
    } catch (error) {
      // Another sheet took its place.
      if ((error as Error).message === ended) return null;
      throw error;
    }
  };
  const list = questionList({
    ...listed,
    controlsOf: (id) => (id === "how-often" ? [level.node, rule] : []),
    // The answer sends the reader to the list of failures.
    tablesOpenIn: ["wrong"],
    wholeTable: (section, { caption }) => desk.call("wholeTable", { section, caption }),
  });
  return {
    node: list.node,
    /** Shows the page, or nothing while there is none. */
    show(page: PageView | null): void {
      list.node.hidden = page === null;
      if (page === null) return;
      const figures = page.pictures.map((picture) => ({
        ...picture,
        drawing: (width?: number) => drawing(picture.name, width),
      }));
      list.show(page.sections, figures);
      const first = page.sections.find(({ id }) => id === "how-often");
      if (first) tell(first.answer.map(plainText).join(" "));
    },
  };
}
