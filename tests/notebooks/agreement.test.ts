import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { agreement, type Agreement, type Page } from "../../notebooks/agreement/agreement.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { gradeFindings } from "../../src/findings/agreement/grade-findings.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";
import { plainText, spanText } from "../../src/report/text.js";
import { checkDrawing } from "../charts/check-drawing.js";

const demo = fileURLToPath(new URL("../../data-demo/", import.meta.url));
const sheetOf = (text: string, name = "readings.csv") => readSheet(new TextEncoder().encode(text), name);
const work = (...given: Parameters<typeof gradeFindings>) => Promise.resolve(gradeFindings(...given));

let notebook: Notebook<Agreement>;
let page: Page;
beforeAll(async () => {
  notebook = startNotebook(agreement(await sheetOf(readFileSync(join(demo, "readings.csv"), "utf8")), work, true));
  page = await notebook.value("page");
});
afterAll(() => notebook.dispose());

const words = (shown: Page, id: string): string =>
  shown.sections
    .find((section) => section.id === id)!
    .answer.map(plainText)
    .join(" ");

describe("the page of the demo", () => {
  it("asks its questions in order and looks at two observers first", () => {
    expect(page.sections.map(({ id }) => id)).toEqual(["same", "together", "far", "change", "why", "many", "paper"]);
    expect(page.found.choices.pair).toEqual([0, 2]);
    expect(words(page, "same")).toMatch(/^A1 and B1 gave the same grade to \d+ of 60 radiographs/);
  });

  it("opens every count of the cross-table to exactly as many radiographs", () => {
    const [table] = page.sections[0]!.tables;
    let all = 0;
    for (const row of table!.rows)
      for (const cell of row.slice(1, -1)) {
        if (typeof cell === "string") throw new Error("a count opens");
        expect(cell.cases).toHaveLength(Number(spanText(cell)));
        all += cell.cases.length;
      }
    expect(all).toBe(60);
  });

  it("draws every radiograph in the map, in the differences and on the strips, at any width", () => {
    expect(page.pictures.map(({ name }) => name)).toEqual([
      "agreement-map",
      "differences",
      "rater-strips",
      "kappa-and-prevalence",
    ]);
    for (const picture of page.pictures)
      for (const width of [undefined, 280, 480, 860]) checkDrawing(picture.drawing(width));
    const marks = (name: string) =>
      page.pictures.find((picture) => picture.name === name)!.drawing(860).rows["points"]!;
    expect(marks("agreement-map")).toHaveLength(60);
    expect(marks("differences")).toHaveLength(60);
    const readings = page.found.readings.readings.flat().filter((value) => value !== null);
    expect(marks("rater-strips")).toHaveLength(readings.length);
    for (const { caption } of page.pictures) expect(caption).toContain("Invented readings.");
  });

  it("shows the agreement on each grade", () => {
    const together = page.sections.find(({ id }) => id === "together")!;
    const each = together.tables.find(({ caption }) => caption.startsWith("Each grade"))!;
    expect(each.rows.map((row) => spanText(row[0]!))).toEqual(["I", "II", "III", "IV"]);
    const { fleiss } = page.found.grades;
    if (fleiss.estimate === null) throw new Error(fleiss.because);
    // Kappa in all is the mean of those of the grades, each weighted by share times one less share.
    const weights = fleiss.grades.map(({ share }) => share * (1 - share));
    const mean =
      fleiss.grades.reduce((sum, one, k) => sum + weights[k]! * one.estimate!, 0) / weights.reduce((a, b) => a + b, 0);
    expect(mean).toBeCloseTo(fleiss.estimate, 12);
  });

  it("fills the reporting items it can and marks the others missing", () => {
    const [items] = page.sections.at(-1)!.tables;
    const state = items!.rows.map((row) => spanText(row[1]!));
    expect(state).toHaveLength(15);
    expect(state.filter((text) => text.startsWith("filled"))).toHaveLength(6);
    expect(state.filter((text) => text.includes("missing: for you to write")).length).toBeGreaterThan(6);
    expect(state.find((text) => text.includes("sets of readings"))).toContain("60 radiographs, 3 observers, 5 sets");
  });
});

describe("the controls", () => {
  it("move the pair, the cut-points, the treatment and the prevalence", async () => {
    notebook.set("pair", [0, 1]);
    expect(words(await notebook.value("page"), "same")).toMatch(/^A1 and A2 gave/);
    notebook.set("cuts", [50]);
    const cut = await notebook.value("page");
    expect(cut.found.graded.grades).toEqual(["I", "II"]);
    expect(cut.found.choices.treatedFrom).toBe(1);
    notebook.set("cuts", [10, 33, 67]);
    notebook.set("treatedFrom", 1);
    notebook.set("prevalence", 0.1);
    const rare = words(await notebook.value("page"), "why");
    notebook.set("prevalence", 0.5);
    const even = words(await notebook.value("page"), "why");
    const kappa = (text: string): number => Number(/kappa would be (0\.\d+)/.exec(text)![1]);
    expect(kappa(rare)).toBeLessThan(kappa(even));
    notebook.set("prevalence", 0.001);
    expect(words(await notebook.value("page"), "why")).toContain("kappa has no value");
  });

  it("plan the next study with the kappa and the width wanted", async () => {
    const found = await notebook.value("page");
    expect(found.found.wanted!.kappa).toBe((found.found.grades.plan as { estimate: number }).estimate);
    notebook.set("planKappa", 0.6);
    notebook.set("planWidth", 0.4);
    const wide = (await notebook.value("page")).found.wanted!;
    notebook.set("planWidth", 0.2);
    const page2 = await notebook.value("page");
    const narrow = page2.found.wanted!;
    // Half the width asks for four times the radiographs, rounded up.
    narrow.rows.forEach((row, k) => expect(Math.abs(row.kappa / wide.rows[k]!.kappa - 4)).toBeLessThan(0.2));
    expect(narrow.rows.map(({ raters }) => raters)).toEqual([2, 3, 4, 6]);
    expect(narrow.rows.every(({ icc }) => icc !== null)).toBe(true);
    expect(words(page2, "many")).toContain("As planned below, kappa of 0.60 to within 0.10 either way: ");
    notebook.set("planKappa", null);
  });

  it("read another file, of grades without measurements", async () => {
    notebook.set("pair", null);
    notebook.set("prevalence", null);
    notebook.set("invented", false);
    notebook.set("sheet", await sheetOf("film,A,B\n1,I,I\n2,II,I\n3,III,III\n4,,II\n", "own.csv"));
    const own = await notebook.value("page");
    expect(own.sections.map(({ id }) => id)).toEqual(["same", "together", "why", "many", "paper"]);
    expect(words(own, "same")).toContain("A and B gave the same grade to 2 of 3 radiographs");
    for (const picture of own.pictures) checkDrawing(picture.drawing(640));
  });

  it("show degenerate files with reasons", async () => {
    for (const text of [
      "film,A,B\n1,II,II\n2,II,II\n",
      "film,A,B\n1,I,II\n",
      "film,A,B\n1,I,\n2,,II\n",
      "film,A,B,C\n1,I,II,\n2,I,I,\n",
      "film,A,B\n1,30.5,30.5\n2,30.5,30.5\n",
      "film,A,B\n1,30.5,31.5\n",
    ]) {
      notebook.set("sheet", await sheetOf(text, "own.csv"));
      const shown = await notebook.value("page");
      for (const picture of shown.pictures) checkDrawing(picture.drawing(640));
      const told = shown.sections.flatMap(({ answer, tables }) => [
        ...answer.map(plainText),
        ...tables.flatMap(({ rows }) => rows.flat().map(spanText)),
      ]);
      expect(told.join(" "), text).not.toMatch(/NaN|null|Infinity|\[object/);
    }
  });

  it("says what is wrong in a file", async () => {
    notebook.set("sheet", await sheetOf("film,A,B\n1,I,I\n2,x4,II\n", "own.csv"));
    await expect(notebook.value("page")).rejects.toThrow('own.csv: row 3, column "A": a grade must be one of I to X');
  });
});

it("the invented readings are what their script writes", () => {
  const folder = mkdtempSync(join(tmpdir(), "readings-"));
  try {
    execFileSync(process.execPath, [join(demo, "make-readings.mjs"), folder]);
    expect(readFileSync(join(folder, "readings.csv"), "utf8")).toBe(readFileSync(join(demo, "readings.csv"), "utf8"));
  } finally {
    rmSync(folder, { recursive: true });
  }
});
