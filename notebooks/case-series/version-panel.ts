import { newVersion, type NewVersion } from "../../src/cases/new-version.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { movedNumbers, type MovedNumber } from "../../src/report/moved-numbers.js";
import type { Section } from "../../src/report/text.js";
import { versionLines } from "../../src/report/version-lines.js";
import type { CaseSeries, Source } from "./case-series.js";
import type { Edits } from "./edit-history.js";

export interface VersionPanel {
  readonly node: HTMLElement;
  /** The sheet as a new version of the one on the page; null when no case is in both. */
  readonly compare: (source: Source, edits: Edits) => Promise<NewVersion | null>;
  /** Shows what the version changed; null: another sheet, nothing to show. */
  readonly take: (version: NewVersion | null) => void;
}

/** What a new version of the sheet changed; the numbers that moved follow as soon as it is counted. */
export function versionPanel(notebook: Notebook<CaseSeries>): VersionPanel {
  const node = element("details", { class: "aside versions", hidden: true, open: true });
  let printed: readonly Section[] | null = null;
  let before: readonly Section[] | null = null;
  let shown: NewVersion | null = null;
  const draw = (moved: readonly MovedNumber[]): void => {
    node.hidden = shown === null;
    if (shown === null) return;
    const parts = versionLines({ ...shown.changes, moved }).flatMap(({ heading, lines }) => [
      element("h2", {}, lines.length > 1 ? `${heading} (${lines.length})` : heading),
      element(
        "ul",
        { tabindex: 0, "aria-label": heading },
        ...lines.slice(0, most).map((line) => element("li", {}, line)),
      ),
      ...(lines.length > most ? [element("p", { class: "note" }, `and ${lines.length - most} more`)] : []),
    ]);
    node.replaceChildren(element("summary", {}, "What the new version changed"), ...parts);
  };
  notebook.observe("page", {
    fulfilled: (page) => {
      if (page === null) return;
      printed = page.sections;
      if (shown !== null && before !== null) draw(movedNumbers(before, printed));
    },
    rejected: () => {},
  });
  return {
    node,
    async compare(source, { answers, roles }) {
      const [old, given] = await Promise.all([notebook.value("source"), notebook.value("givenPlan")]);
      const version = newVersion(old.sheet, source.sheet, { answers, roles: { ...given?.plan.roles, ...roles } });
      return version.related ? version : null;
    },
    take(version) {
      shown = version;
      if (version === null) printed = null;
      before = printed;
      draw([]);
    },
  };
}

const most = 200;
