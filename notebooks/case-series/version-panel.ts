import { element } from "../../src/notebook/element.js";
import { movedNumbers } from "../../src/report/moved-numbers.js";
import type { Section } from "../../src/report/text.js";
import { versionLines } from "../../src/report/version-lines.js";
import type { SheetDesk } from "./sheet-desk.js";
import type { ChangeLines } from "./sheet-work.js";

export interface VersionPanel {
  readonly node: HTMLElement;
  /** Shows what a new version changed; null: another sheet, nothing to show. */
  readonly take: (changes: readonly ChangeLines[] | null) => void;
}

/** What a new version of the sheet changed; the numbers that moved follow as soon as it is counted. */
export function versionPanel(desk: SheetDesk): VersionPanel {
  const node = element("details", { class: "aside versions", hidden: true, open: true });
  let printed: readonly Section[] | null = null;
  let before: readonly Section[] | null = null;
  let shown: readonly ChangeLines[] | null = null;
  const draw = (moved: readonly ChangeLines[]): void => {
    node.hidden = shown === null;
    if (shown === null) return;
    // A sheet in which nothing changed may be counted otherwise than before.
    const changes = moved.length > 0 ? shown.filter(({ count }) => count > 0) : shown;
    node.replaceChildren(
      element("summary", {}, "What the new version changed"),
      ...[...changes, ...moved].flatMap(list),
    );
  };
  desk.observe("page", {
    fulfilled: (page) => {
      if (page === null) return;
      printed = page.sections;
      if (shown !== null && before !== null) draw(movedLines(before, printed));
    },
    rejected: () => {},
  });
  return {
    node,
    take(changes) {
      shown = changes;
      if (changes === null) printed = null;
      before = printed;
      draw([]);
    },
  };
}

function list({ heading, lines, count }: ChangeLines): HTMLElement[] {
  const items = lines.map((line) => element("li", {}, line));
  return [
    element("h2", {}, count > 1 ? `${heading} (${count})` : heading),
    element("ul", { tabindex: 0, "aria-label": heading }, ...items),
    ...(count > lines.length ? [element("p", { class: "note" }, `and ${count - lines.length} more`)] : []),
  ];
}

const most = 200;
const nothing = { added: [], removed: [], changed: [], renamed: [], addedColumns: [], removedColumns: [] };

function movedLines(before: readonly Section[], after: readonly Section[]): ChangeLines[] {
  return versionLines({ ...nothing, moved: movedNumbers(before, after) })
    .filter(({ lines }) => lines.length > 0)
    .map(({ heading, lines }) => ({ heading, lines: lines.slice(0, most), count: lines.length }));
}
