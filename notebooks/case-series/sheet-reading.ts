import { toJson } from "../../src/report/json.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { saveFile } from "../../src/notebook/save.js";
import { readPlan } from "../../src/plan/read-plan.js";
import type { CaseSeries, Source } from "./case-series.js";
import { readingPanel } from "./reading-panel.js";

/** Takes a sheet or a plan, shows how it was read and what is wrong with it. A file that cannot be read changes nothing. */
export function sheetReading(
  notebook: Notebook<CaseSeries>,
  sourceOf: (bytes: Uint8Array<ArrayBuffer>, file: string) => Promise<Source>,
  say: (message: string) => void,
) {
  const error = element("div", { role: "alert" });
  const fail = (message: string): void => error.replaceChildren(element("p", { class: "error" }, message));
  const panel = readingPanel({
    chooseRole: (column, role) => {
      roles = { ...roles, [column]: role };
      notebook.set("roles", roles);
    },
    answer: (question, choice) => {
      answers = { ...answers, [question]: choice };
      notebook.set("answers", answers);
    },
    confirm: () => {
      notebook.set("confirmed", true);
      say("Counted");
    },
    savePlan: () =>
      void notebook.value("plan").then(
        ({ plan }) => saveFile(toJson(plan), "application/json", "plan.json"),
        ({ message }: Error) => fail(message),
      ),
  });
  let answers: CaseSeries["answers"] = {};
  let roles: CaseSeries["roles"] = {};
  const take = async (file: File): Promise<void> => {
    try {
      if (/\.json$/i.test(file.name)) {
        notebook.set("givenPlan", { plan: readPlan(await file.text(), file.name), file: file.name });
        say(`Plan read: ${file.name}`);
      } else {
        const source = await sourceOf(new Uint8Array(await file.arrayBuffer()), file.name);
        answers = {};
        roles = {};
        notebook.set("givenPlan", null);
        notebook.set("roles", roles);
        notebook.set("answers", answers);
        notebook.set("success", null);
        notebook.set("confirmed", false);
        notebook.set("source", source);
        say(`Sheet read: ${file.name}. Nothing is counted until you confirm the columns.`);
      }
      error.replaceChildren();
    } catch (reason) {
      fail((reason as Error).message);
    }
  };
  notebook.observe("table", { fulfilled: panel.showTable, rejected: fail });
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
  return { node: panel.node, error, take, fail };
}
