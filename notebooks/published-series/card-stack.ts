import { blankCard, type PaperCard } from "../../src/findings/series/paper-card.js";
import { cardsJson } from "../../src/findings/series/read-cards.js";
import { button, element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { saveFile } from "../../src/notebook/save.js";
import { cardEditor } from "./card-editor.js";
import type { PublishedSeries } from "./published-series.js";

/** The cards of the page: typed, taken from files, saved, removed, and the last removal undone. */
export function cardStack(notebook: Notebook<PublishedSeries>, say: (message: string) => void) {
  let cards: readonly PaperCard[] = [];
  let before: readonly PaperCard[] | null = null;
  let made = 0;
  const list = element("div", { class: "cards" });
  const set = (next: readonly PaperCard[]): void => {
    cards = next;
    notebook.set("cards", next);
  };
  const fill = (openLast = false): void => {
    list.replaceChildren(...cards.map((card, i) => editor(card, i)));
    if (!openLast) return;
    const last = list.lastElementChild as HTMLDetailsElement | null;
    if (last) last.open = true;
    last?.querySelector("input")?.focus();
  };
  const editor = (card: PaperCard, i: number): HTMLElement =>
    cardEditor(card, made++, {
      changed: (changed) => set(cards.map((one, at) => (at === i ? changed : one))),
      removed: () => {
        before = cards;
        set(cards.filter((_, at) => at !== i));
        fill();
        undo.hidden = false;
        undo.focus();
        say(`${card.name} removed`);
      },
    });
  const undo = button("Undo the removal", () => {
    if (before) set(before);
    fill();
    undo.hidden = true;
  });
  undo.hidden = true;
  const add = button("Add a series", () => {
    const grades = [...new Set(cards.flatMap(({ rows }) => rows.map(({ grade }) => grade)))];
    set([...cards, blankCard(freeName(cards), grades.length > 0 ? grades : ["I", "II", "III", "IV"])]);
    fill(true);
  });
  const save = button("Save the cards", () => {
    saveFile(cardsJson({ cards }), "application/json", "cards.json");
    say("Cards saved");
  });
  const template = button("Blank card to fill in", () => {
    saveFile(
      cardsJson({ cards: [blankCard("name of the series", ["I", "II", "III", "IV"])] }),
      "application/json",
      "blank-card.json",
    );
    say("Blank card saved");
  });
  const clear = button("Start afresh", () => {
    before = cards;
    set([]);
    notebook.set("note", "");
    fill();
    undo.hidden = false;
  });
  void notebook.value("cards").then((first) => {
    cards = first;
    fill();
  });
  return {
    /** Cards of a saved page take the place of all that are there. */
    replace(all: readonly PaperCard[], note: string): void {
      before = null;
      undo.hidden = true;
      set(all);
      notebook.set("note", note);
      fill();
    },
    node: element("div", {}, list, element("div", { class: "bar" }, add, save, template, clear, undo)),
    /** Adds cards from a file; one of the same name takes the place of the old one. */
    async take(read: readonly PaperCard[], note: string): Promise<void> {
      const names = new Set(read.map(({ name }) => name));
      set([...cards.filter(({ name }) => !names.has(name)), ...read]);
      const now = await notebook.value("note");
      notebook.set("note", now === "" ? note : "Some of these series are invented.");
      fill();
      say(`${read.length} series read`);
    },
  };
}

function freeName(cards: readonly PaperCard[]): string {
  for (let i = cards.length + 1; ; i++) if (!cards.some(({ name }) => name === `Series ${i}`)) return `Series ${i}`;
}
