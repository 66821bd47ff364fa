import { readAnswers } from "../../src/cases/read-answers.js";
import { readCases } from "../../src/cases/read-cases.js";
import type { Role } from "../../src/cases/types.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { saveFile } from "../../src/notebook/save.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { csvTable } from "../../src/report/csv-table.js";
import { toJson } from "../../src/report/json.js";
import type { CaseSeries, Source } from "./case-series.js";
import { edited, redone, undone, untouched, type Edits } from "./edit-history.js";
import { jsonKind } from "./json-kind.js";
import { logTable } from "./log-table.js";
import { readingPanel } from "./reading-panel.js";
import { versionPanel } from "./version-panel.js";

/** Takes a sheet, a plan or answers, shows how the sheet was read and what is wrong with it. A file that cannot be read changes nothing. */
export function sheetReading(
  notebook: Notebook<CaseSeries>,
  sourceOf: (bytes: Uint8Array<ArrayBuffer>, file: string) => Promise<Source>,
  say: (message: string) => void,
) {
  const error = element("div", { role: "alert" });
  const fail = (message: string): void => error.replaceChildren(element("p", { class: "error" }, message));
  let history = untouched;
  const stand = (next: typeof history): void => {
    const { answers, roles } = history.now;
    history = next;
    if (next.now.roles !== roles) notebook.set("roles", next.now.roles);
    if (next.now.answers !== answers) notebook.set("answers", next.now.answers);
    panel.showHistory(history);
  };
  const versions = versionPanel(notebook);
  const edit = (change: Partial<Edits>): void => stand(edited(history, { ...history.now, ...change }));
  const save = <K extends "plan" | "table">(cell: K, write: (value: CaseSeries[K]) => void): void =>
    void notebook.value(cell).then(write, ({ message }: Error) => fail(message));
  const panel = readingPanel({
    chooseRole: (column, role: Role) => edit({ roles: { ...history.now.roles, [column]: role } }),
    answer: (question, choice) => edit({ answers: { ...history.now.answers, [question]: choice } }),
    confirm: () => {
      notebook.set("confirmed", true);
      say("Counted");
    },
    savePlan: () => save("plan", ({ plan }) => saveFile(toJson(plan), "application/json", "plan.json")),
    saveAnswers: () => saveFile(toJson(history.now.answers), "application/json", "answers.json"),
    saveLog: () => save("table", (table) => saveFile(csvTable(logTable(table)), "text/csv", "reading-log.csv")),
    undo: () => {
      stand(undone(history));
      say("Undone");
    },
    redo: () => {
      stand(redone(history));
      say("Done again");
    },
  });
  const takeJson = async (text: string, file: string): Promise<void> => {
    if (jsonKind(text, file) === "plan") {
      notebook.set("givenPlan", { plan: readPlan(text, file), file });
      say(`Plan read: ${file}`);
      return;
    }
    const answers = { ...history.now.answers, ...readAnswers(text, file) };
    const [{ sheet }, given] = await Promise.all([notebook.value("source"), notebook.value("givenPlan")]);
    // Refused here, an answer that fits no choice changes nothing.
    readCases(sheet, { answers, roles: { ...given?.plan.roles, ...history.now.roles } });
    edit({ answers });
    say(`Answers read: ${file}`);
  };
  const takeSheet = async (file: File): Promise<void> => {
    if (file.size > large) {
      say(`Reading ${file.name}: a large sheet, the page may stand still for some seconds.`);
      // Time for the message to be drawn.
      await new Promise((drawn) => setTimeout(drawn, 50));
    }
    const source = await sourceOf(new Uint8Array(await file.arrayBuffer()), file.name);
    const said = Object.keys(history.now.answers).length + Object.keys(history.now.roles).length > 0;
    const next = said ? await versions.compare(source, history.now) : null;
    versions.take(next);
    stand({ ...untouched, now: next === null ? untouched.now : { answers: next.answers, roles: next.roles } });
    if (next === null) {
      notebook.set("givenPlan", null);
      notebook.set("success", null);
    }
    notebook.set("confirmed", false);
    notebook.set("source", source);
    const kept = next === null ? "" : " A new version: earlier answers are kept.";
    say(`Sheet read: ${file.name}.${kept} Nothing is counted until you confirm the columns.`);
  };
  const take = async (file: File): Promise<void> => {
    try {
      if (/\.json$/i.test(file.name)) await takeJson(await file.text(), file.name);
      else await takeSheet(file);
      error.replaceChildren();
    } catch (reason) {
      fail((reason as Error).message);
    }
  };
  panel.showHistory(history);
  notebook.observe("table", {
    fulfilled: (table) => void notebook.value("source").then(({ sheet }) => panel.showTable(table, sheet)),
    rejected: fail,
  });
  notebook.observe("plan", {
    fulfilled: (plan) => {
      error.replaceChildren();
      panel.showPlan(plan);
    },
    rejected: (message) => {
      panel.showPlan(message);
      fail(message);
    },
  });
  notebook.observe("confirmed", { fulfilled: panel.showConfirmed, rejected: fail });
  return { node: element("div", {}, versions.node, panel.node), error, take, fail };
}

/** Bytes from which reading takes long enough to be felt. */
const large = 2_000_000;
