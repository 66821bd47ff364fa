// The notebook without a page: what the reader sets changes what is shown, and what is shown comes from the report layer.
import { readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { caseSeries, type CaseSeries, type Source } from "../../notebooks/case-series/case-series.js";
import { unset } from "../../notebooks/case-series/settings.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { plainText } from "../../src/report/text.js";
import { r } from "../r.js";

const file = (name: string): Uint8Array<ArrayBuffer> =>
  new Uint8Array(readFileSync(new URL(`../../data-demo/${name}`, import.meta.url)));
const sourceOf = async (bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Source> => ({
  bytes,
  sheet: await readSheet(bytes, name),
});
const text = (csv: string): Promise<Source> => sourceOf(new TextEncoder().encode(csv), "sheet.csv");
const plan = readPlan(new TextDecoder().decode(file("cohort-plan.json")), "cohort-plan.json");
const given = { plan, file: "cohort-plan.json" };

let notebook: Notebook<CaseSeries>;
afterEach(() => notebook.dispose());
const start = async (): Promise<void> => {
  notebook = startNotebook(
    caseSeries(await sourceOf(file("cohort.csv"), "cohort.csv"), { ...unset, givenPlan: given, confirmed: true }),
  );
};
const answerOf = async (id: string): Promise<string> => {
  const page = await notebook.value("page");
  return page!.sections
    .find((section) => section.id === id)!
    .answer.map(plainText)
    .join(" ");
};

describe("the case series notebook", () => {
  it("asks the seven questions of a series and more, each with its answer", async () => {
    await start();
    const questions = (await notebook.value("page"))!.sections.map(({ question }) => question);
    for (const question of [
      "Who is in it?",
      "How often did it work?",
      "Was it the treatment, or the grade?",
      "How far up the ladder did it go?",
      "Where does it not work?",
      "What went wrong?",
      "Who is missing?",
    ])
      expect(questions).toContain(question);
  });

  it("follows the level: the same counts, other intervals", async () => {
    await start();
    for (const level of [0.95, 0.8]) {
      const wilson = await r(`prop.test(42, 51, conf.level = ${level}, correct = FALSE)$conf.int`);
      const [low, high] = wilson.map((limit) => Math.round(100 * limit));
      notebook.set("level", level);
      expect(await answerOf("how-often")).toContain(`42 of 51 shoulders (82%; ${100 * level}% CI ${low} to ${high})`);
    }
  });

  it("follows the choice of success rule", async () => {
    await start();
    notebook.set("success", "motion");
    expect(await answerOf("how-often")).toContain("raised the arm to at least 150 degrees");
  });

  it("counts nothing before the columns are confirmed, then drafts a plan and says what it assumed", async () => {
    await start();
    notebook.set("confirmed", false);
    notebook.set("givenPlan", null);
    notebook.set("source", await text("ID,Grade,Technique,Success\na,I,closed,yes\nb,II,open,no\nc,II,closed,yes\n"));
    expect(await notebook.value("page")).toBeNull();
    expect((await notebook.value("plan")).assumptions.join(" ")).toContain("grades run from low to high as I, II");
    notebook.set("confirmed", true);
    expect(await answerOf("how-often")).toContain("2 of 3");
  });

  it("reads a column as the reader says", async () => {
    await start();
    notebook.set("givenPlan", null);
    notebook.set("source", await text("ID,Class,Technique,Result\na,I,closed,yes\nb,II,open,no\nc,II,closed,yes\n"));
    notebook.set("roles", { Class: "grade", Result: "success" });
    expect(await answerOf("how-often")).toContain("2 of 3");
  });

  it("names the file and the rule when a sheet has no grade, and works again with the next one", async () => {
    await start();
    notebook.set("givenPlan", null);
    notebook.set("source", await text("ID,Success\na,yes\nb,no\n"));
    await expect(notebook.value("page")).rejects.toThrow(/^sheet\.csv: no column holds a grade/);
    notebook.set("givenPlan", given);
    notebook.set("source", await sourceOf(file("cohort.csv"), "cohort.csv"));
    expect(await answerOf("how-often")).toContain("42 of 51");
  });
});
