import { shareSafe } from "../../src/cases/share-safe.js";
import type { CaseTable } from "../../src/cases/types.js";
import { uniqueRows } from "../../src/cases/unique-rows.js";
import { button, element } from "../../src/notebook/element.js";
import { saveFile } from "../../src/notebook/save.js";
import { sharedCsv } from "../../src/report/shared-csv.js";

/** What leaves a table before it is shared, which rows may still be known again, and the button that saves it. */
export function shareParts(table: CaseTable): HTMLElement[] {
  const shared = shareSafe(table);
  const unique = uniqueRows(shared);
  const shown = unique.slice(0, 30).join(", ");
  const more = unique.length > 30 ? ` and ${unique.length - 30} more` : "";
  const some = `${unique.length} of ${shared.rows.length} rows are the only ones of their kind in the columns that stay: new case numbers ${shown}${more}. Who knows such a case may know it again; ask who decides on sharing data.`;
  const save = button("Save the table to share", () => saveFile(sharedCsv(shared), "text/csv", "cases-to-share.csv"));
  return [
    element("ul", {}, ...shared.changes.map((line) => element("li", {}, line))),
    element("p", { class: "unique" }, unique.length === 0 ? "No row is the only one of its kind." : some),
    element("div", { class: "bar" }, save),
  ];
}
