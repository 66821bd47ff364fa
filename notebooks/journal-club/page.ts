import published from "../../data-demo/published.json?raw";
import { readEvening } from "../../src/findings/club/evening-file.js";
import { readCards } from "../../src/findings/series/read-cards.js";
import { choice } from "../../src/notebook/controls.js";
import { countdown } from "../../src/notebook/countdown.js";
import { button, element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";
import { pageShell } from "../../src/notebook/page-shell.js";
import { questionList } from "../../src/notebook/question-list.js";
import { stage } from "../../src/notebook/stage.js";
import { caution } from "../../src/report/caution.js";
import { notebookLinks } from "../notebook-links.js";
import { cardStack } from "../published-series/card-stack.js";
import type { PublishedSeries } from "../published-series/published-series.js";
import abstract from "./abstract.txt?raw";
import { appraisalForm } from "./appraisal-form.js";
import { claimDesk } from "./claim-desk.js";
import { clubControls } from "./club-controls.js";
import { saveEvening } from "./evening-desk.js";
import { handoutPage, papers, type Paper } from "./handout-page.js";
import { journalClub } from "./journal-club.js";
import { presenterNotes } from "./presenter-notes.js";
import { voteDesk } from "./vote-desk.js";

const minutes = 20;

const shell = pageShell(notebookLinks("journal-club"), caution);
const demo = readCards(new TextEncoder().encode(published), "published.json");
const notebook = startNotebook(
  journalClub({ cards: demo.cards, note: "Invented series.", grade: "IV", text: abstract }),
);

const desk = voteDesk(notebook, shell.say);
const controls = clubControls(notebook);
const claims = claimDesk(notebook);
const notes = presenterNotes();
const appraisal = appraisalForm(notebook);
const paper = handoutPage();
const error = element("p", { class: "error", role: "alert", hidden: true });
// The cards are those of the other notebook; it has the cells "cards" and "note" too, and the stack asks for no others.
const stack = cardStack(notebook as unknown as Notebook<PublishedSeries>, shell.say);
const drop = fileDrop({
  label: "Drop a file of cards, of counts of published series, or a saved evening. It stays on this computer.",
  accept: ".json,.csv",
  taken: async (file) => {
    try {
      await take(new Uint8Array(await file.arrayBuffer()), file.name);
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
  besideOf: (id) => (id === "claim-check" ? [claims.marked] : []),
  controlsOf: (id) => {
    const vote = id === "first-vote" ? [desk.nodeOf("before")] : id === "second-vote" ? [desk.nodeOf("after")] : [];
    const pasted = id === "claim-check" ? [claims.paste] : [];
    const own = id === "appraisal" ? [appraisal.node] : [notes.nodeOf(id)];
    return [...controls.controlsOf(id), ...pasted, ...vote, ...own];
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
  saveEvening(notebook, { votes: desk.votes, say: shell.say }),
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

/** A saved evening takes the place of everything; cards and counts are added. */
async function take(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<void> {
  const evening = readEvening(bytes, name);
  if (evening === null) {
    const read = readCards(bytes, name);
    return stack.take(read.cards, read.note ?? "");
  }
  stack.replace(evening.cards, evening.note);
  controls.take(evening);
  notebook.set("text", evening.text);
  desk.take(evening.votes);
  appraisal.take(evening.appraisal, evening.periods);
  shell.say("Evening opened");
}

function fail(message: string): void {
  error.textContent = message;
  error.hidden = false;
  cards.open = true;
}
