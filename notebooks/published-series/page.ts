import cohort from "../../data-demo/cohort.csv?raw";
import cohortPlan from "../../data-demo/cohort-plan.json?raw";
import published from "../../data-demo/published.json?raw";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { countRows } from "../../src/findings/count-rows.js";
import { ownCard } from "../../src/findings/series/own-card.js";
import type { PaperCard } from "../../src/findings/series/paper-card.js";
import { readCards } from "../../src/findings/series/read-cards.js";
import { buildLedger } from "../../src/ledger/build-ledger.js";
import { element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { startNotebook } from "../../src/notebook/notebook.js";
import { pageShell } from "../../src/notebook/page-shell.js";
import { questionList } from "../../src/notebook/question-list.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { caution } from "../../src/report/caution.js";
import { notebookLinks } from "../notebook-links.js";
import { cardStack } from "./card-stack.js";
import { publishedSeries } from "./published-series.js";
import { seriesControls } from "./series-controls.js";

const shell = pageShell(notebookLinks("published-series"), caution);
const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
const demo = readCards(bytes(published), "published.json");
const notebook = startNotebook(publishedSeries([await ownDemo(), ...demo.cards], "Invented series."));

const error = element("p", { class: "error", role: "alert", hidden: true });
const stack = cardStack(notebook, shell.say);
const controls = seriesControls(notebook);
const questions = questionList({
  open: () => {},
  tipOf: () => undefined,
  say: shell.say,
  controlsOf: controls.controlsOf,
});
const drop = fileDrop({
  label: "Drop a file of cards or counts, or the findings.json of your own series. It stays on this computer.",
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
shell.main.append(element("div", { class: "sheet" }, drop, error, stack.node), questions.node);

notebook.observe("pictures", {
  fulfilled: (pictures) => {
    void Promise.all([notebook.value("sections"), notebook.value("findings")]).then(([sections, { series }]) => {
      error.hidden = true;
      questions.show(sections, pictures);
      const cases = series.reduce((sum, { crude }) => sum + (crude.estimate === null ? 0 : crude.cases), 0);
      const successes = series.reduce((sum, { crude }) => sum + (crude.estimate === null ? 0 : crude.successes), 0);
      const line = `${series.length} series · nothing leaves this computer`;
      shell.showHead({ over: String(successes), under: String(cases), title: "Published series on one axis", line });
    });
  },
  rejected: fail,
});

function fail(message: string): void {
  error.textContent = message;
  error.hidden = false;
}

/** The invented cohort of the case series notebook, as a card. */
async function ownDemo(): Promise<PaperCard> {
  const plan = readPlan(cohortPlan, "cohort-plan.json");
  const ledger = buildLedger(readCases(await readSheet(bytes(cohort), "cohort.csv")), plan);
  const ladder = ledger.ladders[plan.primary]!;
  const lost = ladder.flatMap(({ name, leavers }) =>
    name === "eligible" ? [] : leavers.flatMap(({ cases }) => cases),
  ).length;
  const rule = plan.success.find(({ kind }) => kind === plan.primary)!;
  return ownCard(countRows(ledger, plan.primary), { name: "Our series", unit: "limbs", definition: rule.says, lost });
}
