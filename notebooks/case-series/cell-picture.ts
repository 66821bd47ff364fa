import { element } from "../../src/notebook/element.js";
import { marks, type CellMarks, type Mark } from "./cell-marks.js";

const words: Readonly<Record<Mark, string>> = { read: "read", asked: "asked about", setAside: "set aside" };
/** A full square, an open diamond, a short line: told apart without colour. */
const shapes: Readonly<Record<Mark, (x: number, y: number) => string>> = {
  read: (x, y) => `M${x + 1} ${y + 1}h6v6h-6z`,
  asked: (x, y) => `M${x + 4} ${y}l4 4l-4 4l-4-4z`,
  setAside: (x, y) => `M${x + 2} ${y + 4}h4`,
};
const step = 10;
const left = 40;

/** The sheet as a map, one mark a cell, with its legend. No text of a cell is in it. */
export function cellPicture(map: CellMarks): HTMLElement {
  const all = marks.reduce((sum, mark) => sum + map.counts[mark], 0);
  const legend = marks.map((mark) => {
    const sign = svg(8, 8, "8");
    sign.setAttribute("aria-hidden", "true");
    sign.append(path(mark, shapes[mark](0, 0)));
    return element("li", {}, sign, ` ${words[mark]}: ${map.counts[mark].toLocaleString("en")}`);
  });
  const counted = marks.map((mark) => `${map.counts[mark]} ${words[mark]}`).join(", ");
  const { rows, columns } = map.block;
  const merged =
    rows * columns === 1
      ? ""
      : ` One mark stands for up to ${rows} rows and ${columns} ${columns === 1 ? "column" : "columns"}: asked about when one of its cells is, read when one is.`;
  return element(
    "figure",
    { class: "cell-map" },
    element("ul", { class: "legend" }, ...legend, element("li", {}, `all cells: ${all.toLocaleString("en")}`)),
    element(
      "div",
      { class: "scroll", tabindex: 0, role: "region", "aria-label": "Map of the cells" },
      drawn(map, counted),
    ),
    element("figcaption", {}, `Headings, identifiers and lines that are no cases are set aside.${merged}`),
  );
}

function drawn(map: CellMarks, counted: string): SVGElement {
  const width = left + step * map.rows.reduce((widest, row) => Math.max(widest, row.marks.length), 0);
  const height = step * map.rows.length;
  const picture = svg(width, height, String(width));
  picture.setAttribute("role", "img");
  picture.setAttribute(
    "aria-label",
    `Map of the sheet, one mark a ${map.block.rows * map.block.columns === 1 ? "cell" : "block of cells"}: ${counted}`,
  );
  const lines: Record<Mark, string[]> = { read: [], asked: [], setAside: [] };
  for (const [r, row] of map.rows.entries()) {
    for (const [c, mark] of row.marks.entries()) lines[mark].push(shapes[mark](left + c * step, r * step + 1));
    if (r % 10 === 0) picture.append(rowNumber(row.first, r * step + 8));
  }
  for (const mark of marks) picture.append(path(mark, lines[mark].join("")));
  return picture;
}

const space = "http://www.w3.org/2000/svg";

function svg(width: number, height: number, shown: string): SVGElement {
  const node = document.createElementNS(space, "svg");
  node.setAttribute("viewBox", `0 0 ${width} ${height}`);
  node.setAttribute("width", shown);
  node.setAttribute("height", String(height));
  return node;
}

function path(mark: Mark, line: string): SVGElement {
  const node = document.createElementNS(space, "path");
  node.setAttribute("class", `cell-${mark}`);
  node.setAttribute("d", line);
  return node;
}

function rowNumber(row: number, y: number): SVGElement {
  const node = document.createElementNS(space, "text");
  node.setAttribute("x", String(left - 6));
  node.setAttribute("y", String(y));
  node.textContent = String(row);
  return node;
}
