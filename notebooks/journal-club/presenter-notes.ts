import { element } from "../../src/notebook/element.js";
import type { Screen } from "../../src/report/club/screen.js";

/** What only the presenter reads, under each question. */
export function presenterNotes() {
  const nodes = new Map<string, HTMLElement>();
  return {
    nodeOf(id: string): HTMLElement {
      const node = element("div", { class: "presenter-notes" });
      nodes.set(id, node);
      return node;
    },
    show(screens: readonly Screen[]): void {
      for (const { id, notes, minutes } of screens)
        nodes
          .get(id)
          ?.replaceChildren(
            element("p", { class: "when" }, `For the presenter, about ${minutes} min`),
            ...notes.map((note) => element("p", {}, note)),
          );
    },
  };
}
