import { readAnswers } from "../../src/cases/read-answers.js";
import type { Role } from "../../src/cases/types.js";
import { element } from "../../src/notebook/element.js";
import { saveFile } from "../../src/notebook/save.js";
import type { DraftedPlan } from "../../src/plan/draft-plan.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { toJson } from "../../src/report/json.js";
import { edited, redone, undone, untouched, type Edits } from "./edit-history.js";
import { jsonKind } from "./json-kind.js";
import { readingPanel } from "./reading-panel.js";
import { workProgress } from "./reading-progress.js";
import { unset } from "./settings.js";
import type { SheetDesk } from "./sheet-desk.js";
import { versionPanel } from "./version-panel.js";

/** Takes a sheet, a plan or answers, shows how the sheet was read and what is wrong with it. A file that cannot be read changes nothing. */
export function sheetReading(desk: SheetDesk, say: (message: string) => void) {
  const error = element("div", { role: "alert" });
  const fail = (message: string): void => error.replaceChildren(element("p", { class: "error" }, message));
  let history = untouched;
  let planShown: DraftedPlan | undefined;
  const stand = (next: typeof history): void => {
    history = next;
    desk.set(next.now);
    panel.showHistory(history);
  };
  const versions = versionPanel(desk);
  let counting = false;
  desk.observe("page", {
    fulfilled: (page) => {
      if (counting && page !== null) say("Counted");
      counting = false;
    },
    rejected: () => {
      counting = false;
    },
  });
  const edit = (change: Partial<Edits>): void => stand(edited(history, { ...history.now, ...change }));
  const saveFrom = (text: Promise<string>, name: string): void =>
    void text.then(
      (content) => saveFile(content, "text/csv", name),
      ({ message }: Error) => fail(message),
    );
  const panel = readingPanel({
    chooseRole: (column, role: Role) => edit({ roles: { ...history.now.roles, [column]: role } }),
    answer: (question, choice) => edit({ answers: { ...history.now.answers, [question]: choice } }),
    confirm: () => {
      counting = true;
      desk.set({ confirmed: true });
      panel.showConfirmed(true);
    },
    savePlan: () => planShown && saveFile(toJson(planShown.plan), "application/json", "plan.json"),
    saveAnswers: () => saveFile(toJson(history.now.answers), "application/json", "answers.json"),
    saveLog: () => saveFrom(desk.call("log", null), "reading-log.csv"),
    share: () => desk.call("share", null),
    saveShared: () => saveFrom(desk.call("sharedCsv", null), "cases-to-share.csv"),
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
      desk.set({ givenPlan: { plan: readPlan(text, file), file } });
      say(`Plan read: ${file}`);
      return;
    }
    const answers = { ...history.now.answers, ...readAnswers(text, file) };
    // Refused here, an answer that fits no choice changes nothing.
    await desk.call("tryAnswers", answers);
    edit({ answers });
    say(`Answers read: ${file}`);
  };
  const reading = workProgress(() => {
    desk.giveUp();
    say("Given up; the page shows the sheet that it showed.");
  });
  let taken = 0;
  const takeSheet = async (file: File): Promise<void> => {
    const turn = ++taken;
    const told = (share: number): void => reading.show(`Reading ${file.name}`, share);
    told(0);
    try {
      const sheet = { bytes: new Uint8Array(await file.arrayBuffer()), file: file.name };
      const { level } = desk.settings();
      const follows = Object.keys(history.now.answers).length + Object.keys(history.now.roles).length > 0;
      const opened = await desk.open(sheet, { ...unset, level }, { follows, told });
      if (opened === null) return;
      const { answers, roles } = opened.settings;
      versions.take(opened.changes);
      history = { ...untouched, now: { answers, roles } };
      panel.showHistory(history);
      panel.showConfirmed(false);
      const kept = opened.changes === null ? "" : " A new version: earlier answers are kept.";
      say(`Sheet read: ${file.name}.${kept} Nothing is counted until you confirm the columns.`);
    } finally {
      if (turn === taken) reading.done();
    }
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
  const again = workProgress();
  panel.showHistory(history);
  panel.showConfirmed(true);
  desk.observe("reading", {
    pending: (share) => again.show("Reading the sheet", share),
    fulfilled: (view) => {
      again.done();
      panel.showReading(view);
    },
    rejected: (message) => {
      again.done();
      fail(message);
    },
  });
  desk.observe("plan", {
    fulfilled: (plan) => {
      planShown = plan;
      error.replaceChildren();
      panel.showPlan(plan);
    },
    rejected: (message) => {
      panel.showPlan(message);
      fail(message);
    },
  });
  return {
    node: element("div", {}, versions.node, panel.node),
    progress: [reading.node, again.node],
    error,
    take,
    fail,
  };
}
