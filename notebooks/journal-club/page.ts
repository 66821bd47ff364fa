import published from "../../data-demo/published.json?raw";
import { readCards } from "../../src/findings/series/read-cards.js";
import { choice } from "../../src/notebook/controls.js";
import { countdown } from "../../src/notebook/countdown.js";
import { button, element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";
import { pageShell } from "../../src/notebook/page-shell.js";
import { questionList } from "../../src/notebook/question-list.js";
import { stage } from "../../src/notebook/stage.js";
import { caution } from "../../src/report/sections.js";
import { notebookLinks } from "../notebook-links.js";
import { cardStack } from "../published-series/card-stack.js";
import type { PublishedSeries } from "../published-series/published-series.js";
import { appraisalForm } from "./appraisal-form.js";
import { clubControls } from "./club-controls.js";
import { handoutPage, papers, type Paper } from "./handout-page.js";
import { journalClub } from "./journal-club.js";
import { presenterNotes } from "./presenter-notes.js";
import { voteDesk } from "./vote-desk.js";

const minutes = 20;

const shell = pageShell(notebookLinks("journal-club"), caution);
const demo = readCards(new TextEncoder().encode(published), "published.json");
const notebook = startNotebook(journalClub(demo.cards, "Invented series.", "IV"));

const desk = voteDesk(notebook, shell.say);
const controls = clubControls(notebook);
const notes = presenterNotes();
const appraisal = appraisalForm(notebook);
const paper = handoutPage();
const error = element("p", { class: "error", role: "alert", hidden: true });
// The cards are those of the other notebook; it has the cells "cards" and "note" too, and the stack asks for no others.
const stack = cardStack(notebook as unknown as Notebook<PublishedSeries>, shell.say);
const drop = fileDrop({
  label: "Drop a file of cards or counts of published series. It stays on this computer.",
  accept: ".json,.csv",
  taken: async (file) => {
    try {
      const read = readCards(new Uint8Array(await file.arrayBuffer()), file.name);
      await stack.take(read.cards, read.note ?? "");
      error.hidden = true;
    } catch (problem) {
      fail((problem as Error).message);
    }
  },
});
const questions = questionList({
  open: () => {},
  tipOf: () => undefined,
  say: shell.say,
  controlsOf: (id) => {
    const vote = id === "first-vote" ? [desk.nodeOf("before")] : id === "second-vote" ? [desk.nodeOf("after")] : [];
    return [...controls.controlsOf(id), ...vote, ...(id === "appraisal" ? [appraisal] : [notes.nodeOf(id)])];
  },
});
let screens: readonly string[] = [];
const presenting = stage({
  screens: () => screens,
  timer: countdown(minutes),
  undo: desk.undo,
  tell: shell.tell,
});
const bar = element(
  "div",
  { class: "bar" },
  presenting.start,
  presenting.keys,
  button("Undo a vote", desk.undo),
  button("Print the handout", () => window.print()),
  choice(
    "Paper",
    papers.map((name) => ({ value: name, text: name })),
    "A4",
    (name) => paper.setPaper(name as Paper),
    {
      id: "paper",
      hidden: true,
    },
  ),
);
const cards = element("details", {}, element("summary", {}, "The series: cards to type, load and save"), drop, error);
cards.append(stack.node);
shell.main.append(element("div", { class: "sheet" }, bar, cards), questions.node);

notebook.observe("evening", {
  fulfilled: ({ findings: { chosen, asked }, screens: shown, pictures, handout, appraised }) => {
    error.hidden = true;
    screens = shown.map(({ id }) => id);
    questions.show([...shown, appraised], pictures);
    notes.show(shown);
    const [over, under] = asked.estimate === null ? ["?", "?"] : [String(asked.successes), String(asked.cases)];
    const line = "a vote before, the evidence, a vote after · nothing leaves this computer";
    shell.showHead({ over, under, title: `Journal club: ${chosen?.card.name ?? "no series"}`, line });
    void paper.show(handout, pictures);
  },
  rejected: fail,
});

function fail(message: string): void {
  error.textContent = message;
  error.hidden = false;
  cards.open = true;
}
