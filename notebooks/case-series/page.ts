import cohort from "../../data-demo/cohort.csv?raw";
import cohortPlan from "../../data-demo/cohort-plan.json?raw";
import type { CaseCard } from "../../src/findings/types.js";
import { caseDialog } from "../../src/notebook/case-dialog.js";
import { caseLine } from "../../src/notebook/case-line.js";
import { element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { pageShell, type PageHead } from "../../src/notebook/page-shell.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { caution } from "../../src/report/caution.js";
import { notebookLinks } from "../notebook-links.js";
import { pageOfQuestions } from "./page-of-questions.js";
import { workProgress } from "./reading-progress.js";
import { unset } from "./settings.js";
import { sheetDesk } from "./sheet-desk.js";
import { sheetReading } from "./sheet-reading.js";

const desk = sheetDesk();
const givenPlan = { plan: readPlan(cohortPlan, "cohort-plan.json"), file: "cohort-plan.json" };
const demo = { bytes: new TextEncoder().encode(cohort), file: "cohort.csv" };
const opened = desk.open(demo, { ...unset, givenPlan, confirmed: true });

const shell = pageShell(notebookLinks("case-series"), caution);
const cards = new Map<string, CaseCard>();
const meet = (met: readonly CaseCard[]): void => {
  for (const card of met) cards.set(card.id, card);
};
const dialog = caseDialog((id) => cards.get(id));
const questions = pageOfQuestions(desk, {
  open: dialog.open,
  met: meet,
  tipOf: (id) => (cards.has(id) ? caseLine(cards.get(id)!) : undefined),
  say: shell.say,
  tell: shell.tell,
});
const reading = sheetReading(desk, shell.say);
const counting = workProgress();
const drop = fileDrop({
  label: "Drop your sheet anywhere on this page, or choose it. It stays on this computer.",
  accept: ".csv,.tsv,.txt,.xlsx,.ods,.json",
  taken: reading.take,
});
const top = element("div", { class: "sheet" }, drop, ...reading.progress, counting.node, reading.error, reading.node);
shell.main.append(top, questions.node);
document.body.append(dialog.node);
// Until the first answer the foot stays below the first screen: nothing jumps.
questions.node.style.minHeight = "100vh";
desk.observe("page", {
  pending: () => {
    if (desk.settings().confirmed) counting.show("Counting the cases");
  },
  fulfilled: (page) => {
    counting.done();
    cards.clear();
    if (page) {
      meet(page.cards);
      questions.node.style.minHeight = "";
    }
    shell.showHead(page?.head ?? headBefore(desk.file()));
    questions.show(page);
  },
  rejected: (message) => {
    counting.done();
    reading.fail(message);
    questions.show(null);
  },
});
opened.catch(({ message }: Error) => reading.fail(message));

/** The head of the page while nothing is counted. */
function headBefore(file: string): PageHead {
  const line = "nothing is counted until you confirm what the columns mean · stays on this computer";
  return { over: "?", under: "?", title: file, line };
}
