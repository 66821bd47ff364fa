import { csvTable } from "../report/csv-table.js";
import { plainText, type Section, type TextTable } from "../report/text.js";
import type { OpenCases } from "./case-dialog.js";
import { copyTables, copyText } from "./copy.js";
import { button, element } from "./element.js";
import { figureBlock, type FigureBlock, type SectionFigure } from "./figure-block.js";
import { fillParagraph } from "./fill-paragraph.js";
import { saveFile } from "./save.js";
import { tableNode } from "./table-node.js";

export interface QuestionOptions {
  readonly open: OpenCases;
  /** What to say of a case under the pointer. */
  readonly tipOf: (id: string) => string | undefined;
  /** Does something the reader asked for and says that it is done, or why not. */
  readonly said: (work: () => void | Promise<void>, message: string) => Promise<void>;
  /** Controls under the answer. */
  readonly controls?: readonly HTMLElement[];
  /** What is looked at beside the answer besides pictures and tables. */
  readonly beside?: readonly HTMLElement[];
  /** The tables are what is read here: shown at once. */
  readonly tablesOpen?: boolean;
  /** The table with all its rows, to be copied and saved, where those shown may not be all. */
  readonly wholeTable?: (table: TextTable) => Promise<TextTable>;
}

/** One question of a page: the answer and its controls on the left, the picture on the right, the table under it. */
export interface QuestionSection {
  readonly node: HTMLElement;
  readonly show: (section: Section, figures: readonly SectionFigure[]) => void;
}

export function questionSection(id: string, question: string, options: QuestionOptions): QuestionSection {
  let shown: Section | undefined;
  let shownTables = "";
  const blocks: FigureBlock[] = [];
  const box = (name: string): HTMLElement => element("div", { class: name });
  const [answer, cautions, figures, tables] = [box("answer"), box("cautions"), box("figures"), box("tables")];
  const copy = button(
    "Copy text",
    () => options.said(() => copyText(wordsOf(shown!)), "Text copied"),
    `Copy text: ${question}`,
  );
  const copyAll = button(
    "Copy table",
    () => options.said(async () => copyTables(await Promise.all(shown!.tables.map(wholeBy(options)))), "Table copied"),
    `Copy table: ${question}`,
  );
  const heading = element("h2", { id: `${id}-question` }, question);
  const controls = [...(options.controls ?? []), element("div", { class: "bar" }, copy, copyAll)];
  const left = element("div", { class: "told" }, heading, answer, cautions, ...controls);
  const right = element("div", { class: "shown" }, ...(options.beside ?? []), figures, tables);
  return {
    node: element("section", { id, class: "question", "aria-labelledby": `${id}-question` }, left, right),
    show(section, drawn) {
      shown = section;
      fillParagraphs(answer, section.answer, options.open);
      fillParagraphs(cautions, section.cautions, options.open, "caution");
      showFigures(figures, blocks, drawn, options);
      copyAll.hidden = section.tables.length === 0;
      const key = JSON.stringify(section.tables);
      if (shownTables !== key) fillTables(tables, section.tables, drawn.length === 0, options);
      shownTables = key;
    },
  };
}

function fillParagraphs(into: HTMLElement, paragraphs: Section["answer"], open: OpenCases, name?: string): void {
  while (into.children.length > paragraphs.length) into.lastElementChild!.remove();
  while (into.children.length < paragraphs.length) into.append(element("p", name === undefined ? {} : { class: name }));
  for (const [i, paragraph] of paragraphs.entries()) fillParagraph(into.children[i] as HTMLElement, paragraph, open);
}

function showFigures(
  into: HTMLElement,
  blocks: FigureBlock[],
  figures: readonly SectionFigure[],
  options: QuestionOptions,
): void {
  while (blocks.length > figures.length) blocks.pop()!.node.remove();
  while (blocks.length < figures.length) {
    const block = figureBlock(options);
    blocks.push(block);
    into.append(block.node);
  }
  for (const [i, figure] of figures.entries()) blocks[i]!.show(figure);
}

/** A table is made when it is unfolded; one that was unfolded stays so when its numbers change. */
function fillTables(into: HTMLElement, tables: readonly TextTable[], alone: boolean, options: QuestionOptions): void {
  const wasOpen = [...into.querySelectorAll("details")].map((one) => one.open);
  const nodes = tables.map((table, i) => {
    const node = element("details", {}, element("summary", {}, `Table: ${table.caption}`));
    const fill = (): void => {
      if (node.open && node.children.length === 1) node.append(...tableWithButtons(table, options));
    };
    node.addEventListener("toggle", fill);
    node.open = wasOpen[i] ?? options.tablesOpen ?? alone;
    fill();
    return node;
  });
  into.replaceChildren(...nodes);
}

/** Asks for the whole table only where rows are left out: a copy must follow the click at once. */
function wholeBy({ wholeTable }: QuestionOptions): (table: TextTable) => Promise<TextTable> {
  return async (table) => (table.more === undefined || !wholeTable ? table : wholeTable(table));
}

function tableWithButtons(table: TextTable, options: QuestionOptions): HTMLElement[] {
  const { open, said } = options;
  const whole = wholeBy(options);
  const copy = (): Promise<void> => said(async () => copyTables([await whole(table)]), "Table copied");
  const save = (): Promise<void> => said(async () => saveCsv(await whole(table)), "Table saved");
  const buttons = [
    button("Copy table", copy, `Copy table: ${table.caption}`),
    button("Save CSV", save, `Save CSV: ${table.caption}`),
  ];
  return [tableNode(table, open), element("div", { class: "bar" }, ...buttons)];
}

function saveCsv(table: TextTable): void {
  const name = table.caption.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  saveFile(csvTable(table), "text/csv;charset=utf-8", `${name.replace(/^-|-$/g, "").slice(0, 60) || "table"}.csv`);
}

function wordsOf({ question, answer, cautions }: Section): string {
  return [question, ...[...answer, ...cautions].map(plainText)].join("\n\n");
}
