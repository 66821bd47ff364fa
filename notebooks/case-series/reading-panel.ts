import { roles, type Role } from "../../src/cases/types.js";
import { choice } from "../../src/notebook/controls.js";
import { button, element } from "../../src/notebook/element.js";
import { tableNode } from "../../src/notebook/table-node.js";
import type { DraftedPlan } from "../../src/plan/draft-plan.js";
import { cellPicture } from "./cell-picture.js";
import type { EditHistory } from "./edit-history.js";
import { questionForm } from "./question-form.js";
import type { ReadingView, ShareView } from "./reading-view.js";
import { shareParts } from "./share-parts.js";
import { roleWords } from "./role-words.js";

export interface ReadingActions {
  readonly chooseRole: (column: string, role: Role) => void;
  readonly answer: (question: string, choice: string) => void;
  readonly confirm: () => void;
  readonly savePlan: () => void;
  readonly saveAnswers: () => void;
  readonly saveLog: () => void;
  readonly share: () => Promise<ShareView>;
  readonly saveShared: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** How a sheet was read, for the reader to confirm or correct. */
export interface ReadingPanel {
  readonly node: HTMLElement;
  readonly showReading: (reading: ReadingView) => void;
  /** What can be undone and done again. */
  readonly showHistory: (history: EditHistory) => void;
  /** The plan, or what keeps the sheet from being counted. */
  readonly showPlan: (plan: DraftedPlan | string) => void;
  /** Open and asking while nothing is confirmed, folded away afterwards. */
  readonly showConfirmed: (confirmed: boolean) => void;
}

/** Columns with their first values and the role each was taken for, what is asked, what was set aside, what was assumed. */
export function readingPanel(actions: ReadingActions): ReadingPanel {
  const columns = element("tbody");
  const questions = questionForm(actions.answer);
  const map = element("div");
  const log = fold("What was read as what, and why");
  const share = fold("A table to share");
  const aside = element("div");
  const assumed = element("div");
  const confirm = button("Count these cases", actions.confirm);
  confirm.classList.add("main");
  const save = button("Save the plan", actions.savePlan);
  const undo = button("Undo", actions.undo);
  const redo = button("Redo", actions.redo);
  const saveAnswers = button("Save the answers", actions.saveAnswers);
  const bar = element("div", { class: "bar" }, confirm, undo, redo, saveAnswers, save);
  const heads = ["Column", "First values", "What it means"].map((text) => element("th", { scope: "col" }, text));
  const table = element("table", {}, element("thead", {}, element("tr", {}, ...heads)), columns);
  const scroll = element("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": "Columns" }, table);
  const summary = element("summary", {}, "How the sheet was read");
  const node = element(
    "details",
    { class: "aside reading" },
    summary,
    map,
    scroll,
    questions.node,
    aside,
    log.node,
    share.node,
    assumed,
    bar,
  );
  return {
    node,
    showReading(read) {
      map.replaceChildren(cellPicture(read.marks));
      fillColumns(columns, read, actions);
      questions.show(read.questions);
      log.show(() => logged(read, actions));
      share.show(async () => shareParts(await actions.share(), actions.saveShared));
      aside.replaceChildren(...setAside(read));
    },
    showHistory({ past, future }) {
      const held = document.activeElement;
      undo.disabled = past.length === 0;
      redo.disabled = future.length === 0;
      // A button that is switched off must not take the focus with it.
      if (held === undo && undo.disabled) redo.focus();
      if (held === redo && redo.disabled) undo.focus();
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
function fillColumns(into: HTMLElement, { columns }: ReadingView, actions: ReadingActions): void {
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

function logged({ log }: ReadingView, { saveLog }: ReadingActions): HTMLElement[] {
  const save = element("div", { class: "bar" }, button("Save the log", saveLog));
  return [tableNode(log, () => {}), save];
}

type Draw = () => HTMLElement[] | Promise<HTMLElement[]>;

/** Something that is drawn only while it is unfolded. */
function fold(title: string): { readonly node: HTMLElement; readonly show: (draw: Draw) => void } {
  const body = element("div");
  const node = element("details", { class: "log" }, element("summary", {}, title), body);
  let draw: Draw = () => [];
  const drawn = async (): Promise<void> => {
    const asked = draw;
    const parts = node.open ? await asked() : [];
    if (asked === draw) body.replaceChildren(...parts);
  };
  node.addEventListener("toggle", () => void drawn());
  return {
    node,
    show(next) {
      draw = next;
      void drawn();
    },
  };
}

function setAside({ setAside: { first, count } }: ReadingView): HTMLElement[] {
  if (count === 0) return [];
  const items = first.map(({ row, text, why }) => element("li", {}, `Row ${row}: ${why}${text ? ` (${text})` : ""}`));
  const more = count - items.length;
  const note = more > 0 ? [element("p", { class: "note" }, `${more} more lines are in the saved log.`)] : [];
  return [element("h2", {}, "Set aside, not counted as cases"), element("ul", {}, ...items), ...note];
}

function assumptions({ assumptions: lines }: DraftedPlan): HTMLElement[] {
  if (lines.length === 0) return [];
  const items = lines.map((line) => element("li", {}, line));
  return [element("h2", {}, "Taken for granted"), element("ul", {}, ...items)];
}
