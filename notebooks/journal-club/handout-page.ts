import type { SectionPicture } from "../../src/charts/section-pictures.js";
import { element } from "../../src/notebook/element.js";
import { tableNode } from "../../src/notebook/table-node.js";
import type { Handout } from "../../src/report/club/handout.js";

export const papers = ["A4", "Letter"] as const;
export type Paper = (typeof papers)[number];

/** Pictures of the handout, by name; each stands on it when there is one. */
const shown = ["claim", "vote-shift"];

/** The page that is printed; never seen on the screen. */
export function handoutPage() {
  const node = element("section", { class: "handout", "aria-label": "Handout" });
  const places = shown.map((name) => ({ name, image: element("img", { alt: "" }), text: element("figcaption") }));
  const words = element("div");
  const [pictures, after] = [element("div", { class: "pictures" }), element("div")];
  const title = element("h2");
  pictures.append(...places.map(({ image, text }) => element("figure", {}, image, text)));
  node.append(title, words, pictures, after);
  document.body.append(node);
  const paragraphs = (lines: readonly string[]): HTMLElement[] => lines.map((line) => element("p", {}, line));
  return {
    setPaper(paper: Paper): void {
      node.classList.toggle("letter", paper === "Letter");
    },
    async show(handout: Handout, drawn: readonly SectionPicture[]): Promise<void> {
      title.textContent = handout.title;
      words.replaceChildren(...paragraphs(handout.lines));
      after.replaceChildren(
        tableNode(handout.card, () => {}),
        element("h3", {}, "What the room voted"),
        ...paragraphs(handout.voted),
        ...(handout.takeHome === "" ? [] : [element("h3", {}, "What we will do"), ...paragraphs([handout.takeHome])]),
        element("p", { class: "caution" }, handout.caution),
      );
      const { svgOf } = await import("../../src/charts/svg-of.js");
      for (const { name, image, text } of places) {
        const picture = drawn.find((one) => one.name === name);
        image.parentElement!.hidden = picture === undefined;
        if (!picture) continue;
        const { spec, rows } = picture.drawing(460);
        image.alt = picture.description;
        text.textContent = picture.caption;
        image.src = `data:image/svg+xml,${encodeURIComponent(await svgOf(spec, rows, picture))}`;
      }
    },
  };
}
