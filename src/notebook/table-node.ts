import type { TextTable } from "../report/text.js";
import type { OpenCases } from "./case-dialog.js";
import { element } from "./element.js";
import { fillParagraph } from "./fill-paragraph.js";

/** A printed table whose counted numbers open to their cases, in a box that scrolls by itself when it is narrow. */
export function tableNode({ caption, head, rows, notes, more }: TextTable, open: OpenCases): HTMLElement {
  const heads = head.map((text) => (text === "" ? element("td") : element("th", { scope: "col" }, text)));
  const lines = rows.map((row) => {
    const cells = row.map((span, i) => {
      const cell = i === 0 ? element("th", { scope: "row" }) : element("td");
      fillParagraph(cell, [span], open);
      return cell;
    });
    return element("tr", {}, ...cells);
  });
  const table = element(
    "table",
    {},
    element("caption", {}, caption),
    element("thead", {}, element("tr", {}, ...heads)),
    element("tbody", {}, ...lines),
  );
  const scroll = element("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": caption }, table);
  const left = more === undefined || more === 0 ? [] : [`${more} more rows are in the saved table.`];
  return element("div", {}, scroll, ...[...left, ...notes].map((note) => element("p", { class: "note" }, note)));
}
