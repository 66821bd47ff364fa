import cohort from "../../data-demo/cohort.csv?raw";
import cohortPlan from "../../data-demo/cohort-plan.json?raw";
import { readSheet } from "../../src/cases/read-sheet.js";
import type { CaseCard } from "../../src/findings/types.js";
import { caseDialog } from "../../src/notebook/case-dialog.js";
import { caseLine } from "../../src/notebook/case-line.js";
import { element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { startNotebook } from "../../src/notebook/notebook.js";
import { pageShell, type PageHead } from "../../src/notebook/page-shell.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { caution } from "../../src/report/sections.js";
import { notebookLinks } from "../notebook-links.js";
import { caseSeries, type Source } from "./case-series.js";
import { pageOfQuestions } from "./page-of-questions.js";
import { sheetReading } from "./sheet-reading.js";

const shell = pageShell(notebookLinks("case-series"), caution);
const demo = await sourceOf(new TextEncoder().encode(cohort), "cohort.csv");
const notebook = startNotebook(
  caseSeries(demo, { plan: readPlan(cohortPlan, "cohort-plan.json"), file: "cohort-plan.json" }),
);

let cards: ReadonlyMap<string, CaseCard> = new Map();
const dialog = caseDialog((id) => cards.get(id));
const questions = pageOfQuestions(notebook, {
  open: dialog.open,
  tipOf: (id) => (cards.has(id) ? caseLine(cards.get(id)!) : undefined),
  say: shell.say,
  tell: shell.tell,
});
const reading = sheetReading(notebook, sourceOf, shell.say);
const drop = fileDrop({
  label: "Drop your sheet anywhere on this page, or choose it. It stays on this computer.",
  accept: ".csv,.tsv,.txt,.xlsx,.ods,.json",
  taken: reading.take,
});
shell.main.append(element("div", { class: "sheet" }, drop, reading.error, reading.node), questions.node);
document.body.append(dialog.node);
notebook.observe("page", {
  fulfilled: (page) => {
    cards = new Map(page?.findings.cases.map((card) => [card.id, card]));
    if (page) shell.showHead(questions.headOf(page));
    else void notebook.value("source").then(({ sheet }) => shell.showHead(headBefore(sheet.file)));
    questions.show(page);
  },
  rejected: (message) => {
    reading.fail(message);
    questions.show(null);
  },
});

async function sourceOf(bytes: Uint8Array<ArrayBuffer>, file: string): Promise<Source> {
  return { bytes, sheet: await readSheet(bytes, file) };
}

/** The head of the page while nothing is counted. */
function headBefore(file: string): PageHead {
  const line = "nothing is counted until you confirm what the columns mean · stays on this computer";
  return { over: "?", under: "?", title: file, line };
}
