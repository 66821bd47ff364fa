import { element } from "../../src/notebook/element.js";
import type { ReadingView, ShownQuestion } from "./reading-view.js";
import { rowWords } from "./row-words.js";

export interface QuestionForm {
  readonly node: HTMLElement;
  readonly show: (questions: ReadingView["questions"]) => void;
}

/** The open questions, each a small form: choose with the arrow keys, take with Enter, and the next one has the focus. */
export function questionForm(answer: (question: string, choice: string) => void): QuestionForm {
  const node = element("div", { class: "asked" });
  let answeredAt: number | null = null;
  return {
    node,
    show({ first, count }) {
      const taken = (place: number) => (id: string, choice: string) => {
        answeredAt = place;
        answer(id, choice);
      };
      const items = first.map((one, i) => element("li", {}, form(one, i, taken(i))));
      const left = element("p", { class: "left", role: "status", tabindex: -1 }, leftWords(count, first.length));
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

function leftWords(count: number, shown: number): string {
  if (count === 0) return "No question is left.";
  const more = count > shown ? ` The first ${shown} are shown.` : "";
  return `${count === 1 ? "1 question is" : `${count} questions are`} left.${more}`;
}

function form(
  { id, rows, rowCount, column, asks, choices, cases }: ShownQuestion,
  i: number,
  answer: (id: string, choice: string) => void,
): HTMLElement {
  const name = `question-${i}`;
  const control =
    choices.length > 7
      ? selectOf(name, asks, choices)
      : element("div", { class: "choices" }, ...choices.map((text, k) => radio(name, text, k)));
  const place = [column, placeWords(rows, rowCount)].filter(Boolean).join(", ");
  const legend = element("legend", {}, `${place === "" ? "" : `${place}: `}${asks}`);
  const scope = cases === undefined ? [] : [scopeOf(name, asks, cases, rows)];
  const take = element("button", { type: "submit", "aria-label": `Take this answer: ${asks}` }, "Take this answer");
  const node = element("form", { "data-question": id }, element("fieldset", {}, legend, control, ...scope, take));
  node.addEventListener("submit", (event) => {
    event.preventDefault();
    const given = new FormData(node);
    const chosen = given.get(name);
    const one = given.get(`${name}-for`);
    const only = typeof one === "string" && one !== "" ? ` @ ${one}` : "";
    if (typeof chosen === "string" && chosen !== "") answer(`${id}${only}`, choices[Number(chosen)]!);
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

/** For all like cells, or for one case only. */
function scopeOf(name: string, asks: string, cases: readonly string[], rows: readonly number[]): HTMLElement {
  const all = element("option", { value: "" }, `all ${cases.length} rows`);
  const each = rows.map((row, i) => element("option", { value: cases[i]! }, `row ${row} only (${cases[i]})`));
  const label = `Whom this answer is for: ${asks}`;
  return element("label", {}, "For ", element("select", { name: `${name}-for`, "aria-label": label }, all, ...each));
}

function placeWords(rows: readonly number[], count: number): string {
  if (count <= 1) return rows.map((row) => `row ${row}`).join("");
  return `one answer for rows ${rowWords(rows, count)}`;
}
