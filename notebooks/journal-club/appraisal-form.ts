import {
  caseSeriesItems,
  indexItems,
  scores,
  unanswered,
  verdicts,
  type Appraisal,
  type AppraisalAnswer,
  type AppraisalItem,
  type Periods,
} from "../../src/findings/appraisal/appraisal.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { caseSeriesGroup, indexGroup, itemWords } from "../../src/report/appraisal/appraisal-words.js";
import type { JournalClub } from "./journal-club.js";

/** The questions to a paper, each answered by a person with page and quotation. */
export function appraisalForm(notebook: Notebook<JournalClub>): HTMLElement {
  let answers: Appraisal = {};
  const set = (item: AppraisalItem, part: Partial<AppraisalAnswer>): void => {
    answers = { ...answers, [item]: { ...unanswered, ...answers[item], ...part } };
    notebook.set("appraisal", answers);
  };
  const group = (legend: string, items: readonly AppraisalItem[], choices: readonly string[]): HTMLElement =>
    element(
      "details",
      { class: "appraisal" },
      element("summary", {}, legend),
      ...items.map((item) => itemFields(item, choices, (part) => set(item, part))),
    );
  return element(
    "div",
    {},
    group(indexGroup, indexItems, scores),
    group(caseSeriesGroup, caseSeriesItems, verdicts),
    periodFields((periods) => notebook.set("periods", periods)),
  );
}

function itemFields(
  item: AppraisalItem,
  choices: readonly string[],
  set: (part: Partial<AppraisalAnswer>) => void,
): HTMLElement {
  const options = ["", ...choices].map((value) => element("option", { value }, value || "not answered"));
  const select = element("select", {}, ...options);
  select.addEventListener("change", () => set({ verdict: select.value as AppraisalAnswer["verdict"] }));
  const text = (label: string, size: number, typed: (value: string) => void): HTMLElement => {
    const input = element("input", { type: "text", size, autocomplete: "off" });
    input.addEventListener("input", () => typed(input.value.trim()));
    return element("label", {}, label, input);
  };
  const fields = element(
    "div",
    { class: "fields" },
    element("label", {}, "Answer", select),
    text("Page", 5, (page) => set({ page })),
    text("Quotation", 20, (quotation) => set({ quotation })),
  );
  return element("fieldset", {}, element("legend", {}, itemWords[item]), fields);
}

/** Years in which the two groups of a comparison were treated. */
function periodFields(changed: (periods: Periods) => void): HTMLElement {
  const typed = ["", "", "", ""];
  const names = ["First group from", "First group to", "Second group from", "Second group to"];
  const period = (from: string, to: string): Periods["first"] =>
    /^\d{4}$/.test(from) && /^\d{4}$/.test(to) ? { from: Number(from), to: Number(to) } : null;
  const fields = names.map((name, i) => {
    const input = element("input", { type: "text", inputmode: "numeric", size: 5, autocomplete: "off" });
    input.addEventListener("input", () => {
      typed[i] = input.value.trim();
      changed({ first: period(typed[0]!, typed[1]!), second: period(typed[2]!, typed[3]!) });
    });
    return element("label", {}, name, input);
  });
  return element(
    "details",
    { class: "appraisal" },
    element("summary", {}, "Years of treatment, to count what both groups share"),
    element("div", { class: "fields" }, ...fields),
  );
}
