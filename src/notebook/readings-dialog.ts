import type { OpenCases } from "./case-dialog.js";
import { button, element } from "./element.js";

/** What is told of one radiograph: a text for each column of readings, "missing" where there is none. */
export interface ReadingsCard {
  readonly readings: readonly string[];
}

/** A dialog that lists the radiographs behind a number with every reading of each. */
export function readingsDialog(
  columns: () => readonly string[],
  cardOf: (id: string) => ReadingsCard | undefined,
): { readonly node: HTMLDialogElement; readonly open: OpenCases } {
  const title = element("h2", { id: "radiographs-title" });
  const head = element("tr");
  const body = element("tbody");
  const close = button("Close", () => node.close());
  const region = { class: "scroll", tabindex: 0, role: "region", "aria-labelledby": "radiographs-title" } as const;
  const scroll = element("div", region, element("table", {}, element("thead", {}, head), body));
  const bar = element("div", { class: "bar" }, close);
  const node = element("dialog", { "aria-labelledby": "radiographs-title" }, title, scroll, bar);
  node.addEventListener("click", (event) => {
    if (event.target === node) node.close();
  });
  return {
    node,
    open({ text, title: name, cases }) {
      title.textContent = `${name}: ${text}`;
      head.replaceChildren(...["Radiograph", ...columns()].map((column) => element("th", { scope: "col" }, column)));
      body.replaceChildren(
        ...cases.map((id) => {
          const cells = (cardOf(id)?.readings ?? []).map((reading) => element("td", {}, reading));
          return element("tr", {}, element("th", { scope: "row" }, id), ...cells);
        }),
      );
      if (!node.open) node.showModal();
      scroll.scrollTop = 0;
    },
  };
}
