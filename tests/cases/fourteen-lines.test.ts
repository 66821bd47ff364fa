// The sheet with many hostile situations at once: every line has a fate, every doubt a question.
import { expect, test } from "vitest";
import fourteen from "./sheets/fourteen-lines.csv?raw";
import { asked, gridOf, ofRows, ofText, question } from "./sheet-of.js";

test("finds two heading rows, nine cases, the title, the total and the note", async () => {
  const table = await ofText(fourteen);
  expect(table.header.rows).toEqual([2, 3]);
  expect(table.cases.map(({ row }) => row)).toEqual([4, 5, 6, 7, 8, 9, 10, 11, 12]);
  expect(table.setAside.map(({ row, why }) => [row, why])).toEqual([
    [1, "title or note above the heading"],
    [13, "total or average, not a case"],
    [14, "note, not a case"],
  ]);
  expect(table.columns.map(({ name, role }) => `${name} = ${role}`)).toEqual([
    "ID = id",
    "Name = identifier",
    "Side = side",
    "Injury: Age = age",
    "Injury: Displ = measurement",
    "Injury: Grade = grade",
    "Follow-up: Tech = firstTechnique",
    "Follow-up: Success = success",
    "Follow-up: Elev = measurement",
    "Follow-up: Compl = complication",
  ]);
  expect(table.identifiers).toEqual(["Name"]);
});

test("asks each doubt with its row and reads the rest", async () => {
  const table = await ofText(fourteen);
  expect(asked(table, "Injury: Age")).toEqual(["13.11: 5", "~15: 9", "(a date): 10"]);
  expect(asked(table, "Injury: Displ")).toEqual(["1-Mar: 6", "12 mm: 10", "999: 12"]);
  expect(asked(table, "Injury: Grade")).toEqual(["3-4: 10", "III, 70%: 5"]);
  expect(asked(table, "Follow-up: Tech")).toEqual(["open (failed closed x2): 8"]);
  expect(asked(table, "Follow-up: Success")).toEqual(["?: 12", "yes, 120: 11"]);
  expect(asked(table, "Follow-up: Compl")).toEqual([": 5", "-: 9", "N/A: 10", "pin site inf; stiff: 8"]);
  expect(asked(table, "Follow-up: Elev")).toEqual(["160/150: 8", "full: 10", "999: 12"]);
  expect(asked(table, "Side")).toEqual(["B: 8"]);
  expect(question(table, "* red = lost").rows).toEqual([14]);
  expect(asked(table, "ID")).toEqual(["H003 left: 6 7"]);
  // The age is 12.5 years in both rows, typed as 150m and as 12,5.
  expect(table.questions.find(({ text }) => text === "H003 left")!.asks).not.toContain("Age");
});

test("reads the same table from a workbook", async () => {
  const [text, workbook] = [
    await ofText(fourteen),
    await ofRows(gridOf(fourteen.replace("inf; stiff", "inf + stiff"), ";")),
  ];
  expect(workbook.header).toEqual(text.header);
  expect(workbook.columns.map(({ role }) => role)).toEqual(text.columns.map(({ role }) => role));
  expect(workbook.cases.map(({ id, row }) => [id, row])).toEqual(text.cases.map(({ id, row }) => [id, row]));
});

test("asks about the cell right of the last heading of a workbook too", async () => {
  const table = await ofRows(gridOf(fourteen, ";"));
  expect(table.columns).toHaveLength(10);
  expect(asked(table, "Follow-up: Compl")).toEqual([": 5", "-: 9", "N/A: 10", "pin site inf; stiff: 8"]);
});

test("shows no name", async () => {
  const shown = JSON.stringify(await ofText(fourteen));
  for (const name of [
    "Ann",
    "Example",
    "Sample",
    "Cy ",
    "Invented",
    "Nobody",
    "Fiction",
    "Flo",
    "Made-up",
    "Notreal",
    "Nemo",
  ])
    expect(shown).not.toContain(name);
});
