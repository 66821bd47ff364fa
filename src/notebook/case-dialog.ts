import type { CaseCard } from "../findings/types.js";
import type { OpenNumber } from "../report/text.js";
import { button, element } from "./element.js";

/** Opens the cases behind a number. */
export type OpenCases = (number: OpenNumber) => void;

const heads = ["Case", "Grade", "First technique", "Final technique", "Outcome", "Complications"];

/** A dialog that lists cases: number, grade, techniques, outcome; never an identifier. */
export function caseDialog(cardOf: (id: string) => CaseCard | undefined): {
  readonly node: HTMLDialogElement;
  readonly open: OpenCases;
} {
  const title = element("h2", { id: "cases-title" });
  const body = element("tbody");
  const close = button("Close", () => node.close());
  const head = element("thead", {}, element("tr", {}, ...heads.map((text) => element("th", { scope: "col" }, text))));
  const scroll = element("div", { class: "scroll", tabindex: 0, role: "region", "aria-labelledby": "cases-title" });
  scroll.append(element("table", {}, head, body));
  const left = element("p", { class: "note" });
  const node = element(
    "dialog",
    { "aria-labelledby": "cases-title" },
    title,
    scroll,
    left,
    element("div", { class: "bar" }, close),
  );
  node.addEventListener("click", (event) => {
    if (event.target === node) node.close();
  });
  return {
    node,
    open({ text, title: name, cases, more = 0 }) {
      title.textContent = `${name}: ${text}`;
      body.replaceChildren(...cases.map((id) => line(id, cardOf(id))));
      left.hidden = more === 0;
      left.textContent = `The first ${cases.length} cases; ${more} more are counted and not listed here.`;
      if (!node.open) node.showModal();
      scroll.scrollTop = 0;
    },
  };
}

function line(id: string, card: CaseCard | undefined): HTMLTableRowElement {
  const cells = [card?.grade, card?.firstTechnique, card?.finalTechnique, card?.outcome, complications(card)];
  return element(
    "tr",
    {},
    element("th", { scope: "row" }, id),
    ...cells.map((text) => element("td", {}, text ?? "not known")),
  );
}

function complications(card: CaseCard | undefined): string | undefined {
  if (!card?.complications) return undefined;
  return card.complications.length === 0 ? "none" : card.complications.join(", ");
}
