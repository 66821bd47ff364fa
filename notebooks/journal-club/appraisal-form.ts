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
export function appraisalForm(notebook: Notebook<JournalClub>) {
  let answers: Appraisal = {};
  const forms = new Map<AppraisalItem, Fields>();
  const set = (item: AppraisalItem, part: Partial<AppraisalAnswer>): void => {
    answers = { ...answers, [item]: { ...unanswered, ...answers[item], ...part } };
    notebook.set("appraisal", answers);
  };
  const formOf = (item: AppraisalItem, choices: readonly string[]): HTMLElement => {
    const fields = itemFields(item, choices, (part) => set(item, part));
    forms.set(item, fields);
    return fields.node;
  };
  const group = (legend: string, items: readonly AppraisalItem[], choices: readonly string[]): HTMLElement =>
    element(
      "details",
      { class: "appraisal" },
      element("summary", {}, legend),
      ...items.map((item) => formOf(item, choices)),
    );
  const periods = periodFields((typed) => notebook.set("periods", typed));
  const node = element(
    "div",
    {},
    group(indexGroup, indexItems, scores),
    group(caseSeriesGroup, caseSeriesItems, verdicts),
    periods.node,
  );
  return {
    node,
    /** Answers of a saved evening take the place of those typed. */
    take(saved: Appraisal, years: Periods): void {
      answers = saved;
      for (const [item, fields] of forms) fields.show(saved[item] ?? unanswered);
      periods.show(years);
      notebook.set("appraisal", saved);
      notebook.set("periods", years);
    },
  };
}

interface Fields {
  readonly node: HTMLElement;
  readonly show: (answer: AppraisalAnswer) => void;
}

function itemFields(
  item: AppraisalItem,
  choices: readonly string[],
  set: (part: Partial<AppraisalAnswer>) => void,
): Fields {
  const options = ["", ...choices].map((value) => element("option", { value }, value || "not answered"));
  const select = element("select", {}, ...options);
  select.addEventListener("change", () => set({ verdict: select.value as AppraisalAnswer["verdict"] }));
  const text = (size: number, typed: (value: string) => void): HTMLInputElement => {
    const input = element("input", { type: "text", size, autocomplete: "off" });
    input.addEventListener("input", () => typed(input.value.trim()));
    return input;
  };
  const page = text(5, (typed) => set({ page: typed }));
  const quotation = text(20, (typed) => set({ quotation: typed }));
  const fields = element(
    "div",
    { class: "fields" },
    element("label", {}, "Answer", select),
    element("label", {}, "Page", page),
    element("label", {}, "Quotation", quotation),
  );
  return {
    node: element("fieldset", {}, element("legend", {}, itemWords[item]), fields),
    show(answer) {
      select.value = answer.verdict;
      page.value = answer.page;
      quotation.value = answer.quotation;
    },
  };
}

/** Years in which the two groups of a comparison were treated. */
function periodFields(changed: (periods: Periods) => void) {
  const names = ["First group from", "First group to", "Second group from", "Second group to"];
  const inputs = names.map(() =>
    element("input", { type: "text", inputmode: "numeric", size: 5, autocomplete: "off" }),
  );
  const typed = (): Periods => {
    const [from, to, nextFrom, nextTo] = inputs.map(({ value }) => value.trim());
    return { first: period(from!, to!), second: period(nextFrom!, nextTo!) };
  };
  for (const input of inputs) input.addEventListener("input", () => changed(typed()));
  const labels = names.map((name, i) => element("label", {}, name, inputs[i]!));
  return {
    node: element(
      "details",
      { class: "appraisal" },
      element("summary", {}, "Years of treatment, to count what both groups share"),
      element("div", { class: "fields" }, ...labels),
    ),
    show({ first, second }: Periods): void {
      const years = [first?.from, first?.to, second?.from, second?.to];
      inputs.forEach((input, i) => (input.value = years[i] === undefined ? "" : String(years[i])));
    },
  };
}

function period(from: string, to: string): Periods["first"] {
  return /^\d{4}$/.test(from) && /^\d{4}$/.test(to) ? { from: Number(from), to: Number(to) } : null;
}
