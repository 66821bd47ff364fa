import { element, button } from "./element.js";
import { pictureHost, type ShownPicture } from "./picture-host.js";
import type { QuestionOptions } from "./question-section.js";
import { pngOfSvg, saveFile } from "./save.js";

/** A picture of a section, as it is shown and as it is saved. */
export interface SectionFigure extends ShownPicture {
  /** File name without its ending. */
  readonly name: string;
  readonly title: string;
  readonly caption: string;
}

export interface FigureBlock {
  readonly node: HTMLElement;
  readonly show: (figure: SectionFigure) => void;
}

const dpi = 300;

/** A picture on its plate, with its caption and the buttons that save it. */
export function figureBlock({ open, tipOf, said }: QuestionOptions): FigureBlock {
  let shown: SectionFigure | undefined;
  const picture = pictureHost(tipOf, (id) => open({ text: "1 case", title: `Case ${id}`, cases: [id] }));
  const caption = element("figcaption");
  const svg = async (): Promise<string> => {
    const figure = shown!;
    const [drawing, { svgOf }] = await Promise.all([figure.drawing(), import("../charts/svg-of.js")]);
    if (drawing === null) throw new Error("the figure is no longer shown");
    return svgOf(drawing.spec, drawing.rows, figure);
  };
  const saveSvg = async (): Promise<void> => saveFile(await svg(), "image/svg+xml", `${shown!.name}.svg`);
  const savePng = async (): Promise<void> =>
    saveFile(await pngOfSvg(await svg(), dpi), "image/png", `${shown!.name}-${dpi}dpi.png`);
  const [asSvg, asPng] = [
    button("Save SVG", () => said(saveSvg, "Figure saved")),
    button(`Save PNG, ${dpi} dpi`, () => said(savePng, "Figure saved")),
  ];
  return {
    node: element("figure", {}, picture.node, caption, element("div", { class: "bar" }, asSvg, asPng)),
    show(figure) {
      shown = figure;
      caption.textContent = figure.caption;
      asSvg.setAttribute("aria-label", `Save SVG: ${figure.title}`);
      asPng.setAttribute("aria-label", `Save PNG, ${dpi} dpi: ${figure.title}`);
      picture.show(figure);
    },
  };
}
