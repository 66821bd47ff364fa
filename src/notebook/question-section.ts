import { csvTable } from "../report/csv-table.js";
import { plainText, type Section, type TextTable } from "../report/text.js";
import type { OpenCases } from "./case-dialog.js";
import { copyTable, copyText } from "./copy.js";
import { button, element } from "./element.js";
import { fillParagraph } from "./fill-paragraph.js";
import { pictureHost, type ShownPicture } from "./picture-host.js";
import { pngOfSvg, saveFile } from "./save.js";
import { tableNode } from "./table-node.js";

/** The picture of a section, as it is shown and as it is saved. */
export interface SectionFigure extends ShownPicture {
  /** File name without its ending. */
  readonly name: string;
  readonly title: string;
  readonly caption: string;
}

export interface QuestionOptions {
  readonly open: OpenCases;
  /** What to say of a case under the pointer. */
  readonly tipOf: (id: string) => string | undefined;
  /** Says something to everyone, screen readers included. */
  readonly say: (message: string) => void;
  /** Controls under the answer. */
  readonly controls?: readonly HTMLElement[];
  /** The tables are what is read here: shown at once. */
  readonly tablesOpen?: boolean;
}

/** One question of a page: the answer and its controls on the left, the picture on the right, the table under it. */
export interface QuestionSection {
  readonly node: HTMLElement;
  readonly show: (section: Section, figure: SectionFigure | undefined) => void;
}

const dpi = 300;

export function questionSection(id: string, question: string, options: QuestionOptions): QuestionSection {
  const shown: { section?: Section; figure?: SectionFigure; tables?: string } = {};
  const answer = element("div", { class: "answer" });
  const cautions = element("div");
  const tables = element("div");
  const picture = pictureHost(options.tipOf, (one) =>
    options.open({ text: "1 case", title: `Case ${one}`, cases: [one] }),
  );
  const caption = element("figcaption");
  const said = async (work: () => void | Promise<void>, message: string): Promise<void> => {
    try {
      await work();
      options.say(message);
    } catch (error) {
      options.say(`Not done: ${(error as Error).message}`);
    }
  };
  const figureBar = figureButtons(question, () => shown.figure, said);
  const figure = element("figure", {}, picture.node, caption, figureBar);
  const text = button(
    "Copy text",
    () => said(() => copyText(wordsOf(shown.section!)), "Text copied"),
    `Copy text: ${question}`,
  );
  const right = element("div", { class: "shown" }, figure, tables);
  const left = element("div", { class: "told" }, element("h2", { id: `${id}-question` }, question), answer, cautions);
  left.append(...(options.controls ?? []), element("div", { class: "bar" }, text));
  return {
    node: element("section", { id, "aria-labelledby": `${id}-question` }, left, right),
    show(section, drawn) {
      shown.section = section;
      if (drawn) shown.figure = drawn;
      fillParagraphs(answer, "p", section.answer, options.open);
      fillParagraphs(cautions, "p", section.cautions, options.open, "caution");
      figure.hidden = drawn === undefined;
      if (drawn) {
        caption.textContent = drawn.caption;
        picture.show(drawn);
      }
      const key = JSON.stringify(section.tables);
      if (shown.tables === key) return;
      shown.tables = key;
      fillTables(tables, section.tables, options, said);
    },
  };
}

type Said = (work: () => void | Promise<void>, message: string) => Promise<void>;

function fillParagraphs(
  into: HTMLElement,
  tag: "p",
  paragraphs: Section["answer"],
  open: OpenCases,
  name?: string,
): void {
  while (into.children.length > paragraphs.length) into.lastElementChild!.remove();
  while (into.children.length < paragraphs.length) into.append(element(tag, name === undefined ? {} : { class: name }));
  for (const [i, paragraph] of paragraphs.entries()) fillParagraph(into.children[i] as HTMLElement, paragraph, open);
}

function figureButtons(question: string, figureOf: () => SectionFigure | undefined, said: Said): HTMLElement {
  const svg = async (): Promise<{ readonly svg: string; readonly name: string }> => {
    const figure = figureOf()!;
    const { spec, rows } = figure.drawing();
    const { svgOf } = await import("../charts/svg-of.js");
    return { svg: await svgOf(spec, rows, figure), name: figure.name };
  };
  const saveSvg = async (): Promise<void> => {
    const file = await svg();
    saveFile(file.svg, "image/svg+xml", `${file.name}.svg`);
  };
  const savePng = async (): Promise<void> => {
    const file = await svg();
    saveFile(await pngOfSvg(file.svg, dpi), "image/png", `${file.name}-${dpi}dpi.png`);
  };
  return element(
    "div",
    { class: "bar" },
    button("Save SVG", () => said(saveSvg, "Figure saved"), `Save figure as SVG: ${question}`),
    button(`Save PNG, ${dpi} dpi`, () => said(savePng, "Figure saved"), `Save figure as PNG, ${dpi} dpi: ${question}`),
  );
}

/** Tables that were opened stay open when their numbers change. */
function fillTables(into: HTMLElement, tables: readonly TextTable[], options: QuestionOptions, said: Said): void {
  const wasOpen = [...into.querySelectorAll("details")].map((one) => one.open);
  into.replaceChildren(
    ...tables.map((table, i) => {
      const bar = element(
        "div",
        { class: "bar" },
        button("Copy table", () => said(() => copyTable(table), "Table copied"), `Copy table: ${table.caption}`),
        button("Save CSV", () => said(() => saveCsv(table), "Table saved"), `Save table as CSV: ${table.caption}`),
      );
      const open = wasOpen[i] ?? options.tablesOpen ?? false;
      const summary = element("summary", {}, `Table: ${table.caption}`);
      return element("details", { open }, summary, tableNode(table, options.open), bar);
    }),
  );
}

function saveCsv(table: TextTable): void {
  const name = table.caption
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60);
  saveFile(csvTable(table), "text/csv;charset=utf-8", `${name || "table"}.csv`);
}

function wordsOf({ question, answer, cautions }: Section): string {
  return [question, ...[...answer, ...cautions].map(plainText)].join("\n\n");
}
