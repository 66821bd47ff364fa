import type { Section, TextTable } from "../report/text.js";
import type { SectionFigure } from "./figure-block.js";
import { element } from "./element.js";
import { questionSection, type QuestionOptions, type QuestionSection } from "./question-section.js";

/** A figure with the id of the section it belongs to. */
export type ListedFigure = SectionFigure & { readonly section: string };

export interface QuestionListOptions extends Omit<
  QuestionOptions,
  "said" | "controls" | "beside" | "tablesOpen" | "wholeTable"
> {
  /** Shows a short message. */
  readonly say: (message: string) => void;
  /** Controls under the answer of a section. */
  readonly controlsOf: (id: string) => readonly HTMLElement[];
  /** What is looked at beside the answer of a section, besides its pictures and tables. */
  readonly besideOf?: (id: string) => readonly HTMLElement[];
  /** Sections whose tables are shown at once. */
  readonly tablesOpenIn?: readonly string[];
  /** A table of a section with all its rows, where those shown may not be all. */
  readonly wholeTable?: (section: string, table: TextTable) => Promise<TextTable>;
}

/** The questions of a page in the order they come; each is laid once and filled again. */
export function questionList({
  say,
  controlsOf,
  besideOf,
  tablesOpenIn = [],
  wholeTable,
  ...options
}: QuestionListOptions) {
  const node = element("div");
  const shown = new Map<string, QuestionSection>();
  const said = async (work: () => void | Promise<void>, message: string): Promise<void> => {
    try {
      await work();
      say(message);
    } catch (error) {
      say(`Not done: ${(error as Error).message}`);
    }
  };
  return {
    node,
    show(sections: readonly Section[], figures: readonly ListedFigure[]): void {
      for (const section of sections) {
        let held = shown.get(section.id);
        if (!held) {
          const tables = tablesOpenIn.includes(section.id) ? { tablesOpen: true } : {};
          held = questionSection(section.id, section.question, {
            ...options,
            said,
            controls: controlsOf(section.id),
            ...(besideOf ? { beside: besideOf(section.id) } : {}),
            ...tables,
            ...(wholeTable ? { wholeTable: (table: TextTable) => wholeTable(section.id, table) } : {}),
          });
          shown.set(section.id, held);
          node.append(held.node);
        }
        held.show(
          section,
          figures.filter((figure) => figure.section === section.id),
        );
      }
    },
  };
}
