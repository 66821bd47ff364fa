import { roles, type CaseTable, type Question, type Role } from "../../src/cases/types.js";
import { choice } from "../../src/notebook/controls.js";
import { button, element } from "../../src/notebook/element.js";
import type { DraftedPlan } from "../../src/plan/draft-plan.js";
import { roleWords } from "./role-words.js";

export interface ReadingActions {
  readonly chooseRole: (column: string, role: Role) => void;
  readonly answer: (question: string, choice: string) => void;
  readonly confirm: () => void;
  readonly savePlan: () => void;
}

/** How a sheet was read, for the reader to confirm or correct. */
export interface ReadingPanel {
  readonly node: HTMLElement;
  readonly showTable: (table: CaseTable) => void;
  /** The plan, or what keeps the sheet from being counted. */
  readonly showPlan: (plan: DraftedPlan | string) => void;
  /** Open and asking while nothing is confirmed, folded away afterwards. */
  readonly showConfirmed: (confirmed: boolean) => void;
}

/** Columns with their first values and the role each was taken for, what is asked, what was set aside, what was assumed. */
export function readingPanel(actions: ReadingActions): ReadingPanel {
  const columns = element("tbody");
  const questions = element("div");
  const aside = element("div");
  const assumed = element("div");
  const confirm = button("Count these cases", actions.confirm);
  confirm.classList.add("main");
  const save = button("Save the plan", actions.savePlan);
  const bar = element("div", { class: "bar" }, confirm, save);
  const heads = ["Column", "First values", "What it means"].map((text) => element("th", { scope: "col" }, text));
  const table = element("table", {}, element("thead", {}, element("tr", {}, ...heads)), columns);
  const scroll = element("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": "Columns" }, table);
  const summary = element("summary", {}, "How the sheet was read");
  const node = element("details", { class: "aside reading" }, summary, scroll, questions, aside, assumed, bar);
  return {
    node,
    showTable(read) {
      fillColumns(columns, read, actions);
      questions.replaceChildren(...asked(read.questions, actions));
      aside.replaceChildren(...setAside(read));
    },
    showPlan(plan) {
      confirm.disabled = save.disabled = typeof plan === "string";
      assumed.replaceChildren(...(typeof plan === "string" ? [] : assumptions(plan)));
    },
    showConfirmed(confirmed) {
      node.open = !confirmed;
      confirm.hidden = confirmed;
      summary.textContent = confirmed ? "How the sheet was read" : "What does each column mean?";
    },
  };
}

/** The selects stay in place while the roles are those shown, so that a choice keeps the focus. */
function fillColumns(into: HTMLElement, { columns }: CaseTable, actions: ReadingActions): void {
  const options = roles.map((role) => ({ value: role, text: roleWords[role] }));
  const held = [...into.querySelectorAll("th")].map((cell) => cell.textContent);
  const same = held.length === columns.length && columns.every(({ name }, i) => held[i] === name);
  if (!same) into.replaceChildren(...columns.map(() => element("tr")));
  for (const [i, { name, role, examples }] of columns.entries()) {
    const row = into.children[i]!;
    const values = role === "identifier" ? "not shown" : examples.join(", ");
    if (same) {
      row.querySelector("td")!.textContent = values;
      row.querySelector("select")!.value = role;
      continue;
    }
    const chosen = (value: string): void => actions.chooseRole(name, value as Role);
    const select = choice(`Meaning of ${name}`, options, role, chosen, { id: `role-${i}`, hidden: true });
    row.append(element("th", { scope: "row" }, name), element("td", {}, values), element("td", {}, select));
  }
}

function asked(questions: readonly Question[], { answer }: ReadingActions): HTMLElement[] {
  if (questions.length === 0) return [];
  const items = questions.map(({ id, rows, column, asks, choices }, i) => {
    const place = [column, rows.length > 0 ? `row ${rows.join(", ")}` : ""].filter(Boolean).join(", ");
    const options = [{ value: "", text: "not answered" }, ...choices.map((text) => ({ value: text, text }))];
    const taken = (value: string): void => {
      if (value !== "") answer(id, value);
    };
    const select = choice(`Answer: ${asks}`, options, "", taken, { id: `question-${i}`, hidden: true });
    return element("li", {}, element("p", {}, `${place === "" ? "" : `${place}: `}${asks}`), select);
  });
  return [
    element("h2", {}, "Asked about the sheet"),
    element("p", { class: "note" }, "What is not answered is counted neither as yes nor as no."),
    element("ol", { class: "questions", tabindex: 0, "aria-label": "Questions about the sheet" }, ...items),
  ];
}

function setAside({ setAside: rows }: CaseTable): HTMLElement[] {
  if (rows.length === 0) return [];
  const items = rows.map(({ row, text, why }) => element("li", {}, `Row ${row}: ${why}${text ? ` (${text})` : ""}`));
  return [element("h2", {}, "Set aside, not counted as cases"), element("ul", {}, ...items)];
}

function assumptions({ assumptions: lines }: DraftedPlan): HTMLElement[] {
  if (lines.length === 0) return [];
  const items = lines.map((line) => element("li", {}, line));
  return [element("h2", {}, "Taken for granted"), element("ul", {}, ...items)];
}
