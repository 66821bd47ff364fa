import { button, element } from "../../src/notebook/element.js";
import type { ShareView } from "./reading-view.js";

/** What leaves a table before it is shared, which rows may still be known again, and the button that saves it. */
export function shareParts({ changes, rows, unique }: ShareView, save: () => void): HTMLElement[] {
  const left = unique.count - unique.first.length;
  const more = left > 0 ? ` and ${left} more` : "";
  const some = `${unique.count} of ${rows} rows are the only ones of their kind in the columns that stay: new case numbers ${unique.first.join(", ")}${more}. Who knows such a case may know it again; ask who decides on sharing data.`;
  return [
    element("ul", {}, ...changes.map((line) => element("li", {}, line))),
    element("p", { class: "unique" }, unique.count === 0 ? "No row is the only one of its kind." : some),
    element("div", { class: "bar" }, button("Save the table to share", save)),
  ];
}
