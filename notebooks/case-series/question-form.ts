import type { Question } from "../../src/cases/types.js";
import { element } from "../../src/notebook/element.js";

export interface QuestionForm {
  readonly node: HTMLElement;
  readonly show: (questions: readonly Question[]) => void;
}

/** More at once would be a burden to read and to draw; the next ones come up as these are answered. */
const atOnce = 30;

/** The open questions, each a small form: choose with the arrow keys, take with Enter, and the next one has the focus. */
export function questionForm(answer: (question: string, choice: string) => void): QuestionForm {
  const node = element("div", { class: "asked" });
  let answeredAt: number | null = null;
  return {
    node,
    show(questions) {
      const taken = (place: number) => (id: string, choice: string) => {
        answeredAt = place;
        answer(id, choice);
      };
      const items = questions.slice(0, atOnce).map((one, i) => element("li", {}, form(one, i, taken(i))));
      const left = element("p", { class: "left", role: "status", tabindex: -1 }, leftWords(questions.length));
      const head = element("h2", {}, "Asked about the sheet");
      const note = element("p", { class: "note" }, "What is not answered is counted neither as yes nor as no.");
      node.replaceChildren(head, left);
      if (items.length > 0)
        node.append(
          note,
          element("ol", { class: "questions", tabindex: 0, "aria-label": "Questions about the sheet" }, ...items),
        );
      if (answeredAt === null) return;
      const next = items[Math.min(answeredAt, items.length - 1)]?.querySelector("input, select");
      ((next as HTMLElement | null | undefined) ?? left).focus();
      answeredAt = null;
    },
  };
}

function leftWords(count: number): string {
  if (count === 0) return "No question is left.";
  const more = count > atOnce ? ` The first ${atOnce} are shown.` : "";
  return `${count === 1 ? "1 question is" : `${count} questions are`} left.${more}`;
}

function form(
  { id, rows, column, asks, choices }: Question,
  i: number,
  answer: (id: string, choice: string) => void,
): HTMLElement {
  const name = `question-${i}`;
  const control =
    choices.length > 7
      ? selectOf(name, asks, choices)
      : element("div", { class: "choices" }, ...choices.map((text, k) => radio(name, text, k)));
  const place = [column, rowWords(rows)].filter(Boolean).join(", ");
  const legend = element("legend", {}, `${place === "" ? "" : `${place}: `}${asks}`);
  const take = element("button", { type: "submit", "aria-label": `Take this answer: ${asks}` }, "Take this answer");
  const node = element("form", { "data-question": id }, element("fieldset", {}, legend, control, take));
  node.addEventListener("submit", (event) => {
    event.preventDefault();
    const chosen = new FormData(node).get(name);
    if (typeof chosen === "string" && chosen !== "") answer(id, choices[Number(chosen)]!);
  });
  return node;
}

function radio(name: string, text: string, k: number): HTMLElement {
  return element("label", {}, element("input", { type: "radio", name, value: k, required: true }), ` ${text}`);
}

function selectOf(name: string, asks: string, choices: readonly string[]): HTMLElement {
  const options = choices.map((text, k) => element("option", { value: k }, text));
  const none = element("option", { value: "" }, "not answered");
  return element("select", { name, required: true, "aria-label": `Answer: ${asks}` }, none, ...options);
}

function rowWords(rows: readonly number[]): string {
  if (rows.length === 0) return "";
  if (rows.length === 1) return `row ${rows[0]}`;
  const more = rows.length > 12 ? ` and ${rows.length - 12} more` : "";
  return `one answer for rows ${rows.slice(0, 12).join(", ")}${more}`;
}
