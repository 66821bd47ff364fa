// The sheet comes back changed: matched by child, side and date; answers stay; nothing changes without a line.
import { expect, test } from "vitest";
import { carryAnswers } from "../../src/cases/carry-answers.js";
import { cellMap } from "../../src/cases/cell-map.js";
import { compareVersions } from "../../src/cases/compare-versions.js";
import { lastDigits } from "../../src/cases/last-digits.js";
import { newVersion } from "../../src/cases/new-version.js";
import { uniqueRows } from "../../src/cases/unique-rows.js";
import { longForm } from "../../src/cases/long-form.js";
import { readAnswers } from "../../src/cases/read-answers.js";
import { shareSafe } from "../../src/cases/share-safe.js";
import { templateSheet } from "../../src/cases/template-sheet.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { readCases } from "../../src/cases/read-cases.js";
import { column, ofText, question } from "./sheet-of.js";

const first = `ID,Name,Side,Injury date,Grade,Success,Elev
H001,Ann Zorvia,L,2021-04-03,II,Y,170
H002,Bo Quell,R,2021-05-03,3-4,Y,160
H003,Cy Brumax,L,2021-06-03,III,x,155
H003,Cy Brumax,R,2021-06-03,IV,N,120
`;
const second = `Side,ID,Severity grade,Success,Injury date,Name,Elev
L,H005,I,Y,2022-01-03,Di Tyndil,175
R,H002,3-4,Y,2021-05-03,Bo Quell,160
L,H003,IV,x,2021-06-03,Cy Brumax,155
R,H003,IV,N,2021-06-03,Cy Brumax,121
`;

test("lists cases added and removed and cells changed, whatever the order of rows and columns", async () => {
  const [before, after] = [await ofText(first), await ofText(second)];
  expect(compareVersions(before, after)).toEqual({
    added: [{ id: "H005", row: 2 }],
    removed: [{ id: "H001", row: 2 }],
    changed: [
      { id: "H003 left", row: 4, column: "Severity grade", before: "III", after: "IV" },
      { id: "H003 right", row: 5, column: "Elev", before: "120", after: "121" },
    ],
    renamed: [{ before: "Grade", after: "Severity grade" }],
    addedColumns: [],
    removedColumns: [],
  });
});

test("carries answers to the new version, over a renamed column", async () => {
  const [before, after] = [await ofText(first), await ofText(second)];
  const answers = { [question(before, "3-4").id]: "grade IV", [question(before, "x").id]: "no", gone: "yes" };
  const carried = carryAnswers(answers, compareVersions(before, after), after);
  expect(carried).toEqual({ "Severity grade | grade | 3-4": "grade IV", "Success | value | x": "no" });
  const answered = await ofText(second, { answers: carried });
  expect(column(answered, "Severity grade")[1]).toEqual({ kind: "grade", grade: "IV" });
  expect(answered.questions.map(({ id }) => id)).toEqual(["colour"]);
});

test("one answer covers all like cells, an answer for one case comes before it, and both are logged", async () => {
  const sheet = "ID,Grade,Success\nH1,II,x\nH2,III,x\nH3,III,x\n";
  const answers = { "Success | value | x": "yes", "Success | value | x @ H2": "no" };
  const table = await ofText(sheet, { answers });
  expect(column(table, "Success")).toEqual([true, false, true].map((yes) => ({ kind: "yesNo", yes })));
  expect(table.log.filter(({ column: name }) => name === "Success").map(({ rows, why }) => [rows, why])).toEqual([
    [[2, 3, 4], "answered: yes"],
    [[3], "answered for this case: no"],
  ]);
});

test("an answer that fits no choice is refused with its question, row and choices", async () => {
  await expect(
    ofText("ID,Grade,Success\nH1,II,x\n", { answers: { "Success | value | x": "perhaps" } }),
  ).rejects.toThrow(
    'invented.csv: row 2, column "Success": the answer to "Success | value | x" must be one of "yes", "no", "not known", "not done", "not applicable", "lost", or a plain value of the column, got "perhaps"',
  );
});

test("answers are read from JSON, and what is no answer is named", () => {
  expect(readAnswers('\uFEFF{"a | b": "yes", "n": 3}', "answers.json")).toEqual({ "a | b": "yes", n: "3" });
  expect(() => readAnswers("{", "answers.json")).toThrow(
    "answers.json: is not JSON; expected one object of question and answer",
  );
  expect(() => readAnswers("[]", "answers.json")).toThrow("answers.json: must hold one object of question and answer");
  expect(() => readAnswers('{"a": {"b": 1}}', "answers.json")).toThrow(
    'answers.json: column "a": the answer must be text',
  );
});

test("the cell map gives every row of the file but the heading one strip", async () => {
  const map = cellMap(await ofText(`${first}Total,,,,,3,\n`));
  expect(map.columns).toEqual(["ID", "Name", "Side", "Injury date", "Grade", "Success", "Elev"]);
  expect(map.rows.map(({ row, fates }) => `${row} ${fates.map((fate) => fate[0]).join("")}`)).toEqual([
    "2 rwrrrrr",
    "3 rwrrarr",
    "4 rwrrrar",
    "5 rwrrrrr",
    "6 sssssss",
  ]);
  expect(map.rows[1]!.questions).toEqual(["Grade | grade | 3-4"]);
});

test("the table to share has new numbers, days in place of dates and whole years", async () => {
  const table = await ofText(
    "ID,Child,DOB,Age,Injury date,Op date,Grade,Notes\nH7,C3,2009-01-01,12+6,2021-07-01,2021-07-04,II,Ann's school\nH8,C3,2009-01-01,12.5,2021-07-01,2021-07-05,III,x\n",
  );
  const shared = shareSafe(table);
  expect(shared.columns.map(({ name }) => name)).toEqual([
    "case",
    "child",
    "Age (whole years)",
    "Injury date (day 0)",
    "Op date (days)",
    "Grade",
  ]);
  expect(shared.rows).toEqual([
    ["1", "1", "12", "0", "3", "II"],
    ["2", "1", "12", "0", "4", "III"],
  ]);
  expect(shared.changes[0]).toBe("left out: ID, Child, DOB, Notes");
  expect(JSON.stringify(shared)).not.toMatch(/2021|2009|H7|Ann/);
});

test("repeated visits become one row each, in order of time", async () => {
  const table = await ofText("ID,Grade,Elev last,Elev 6 weeks,Elev 3m,Elev 1y\nH1,II,170,90,130,170\n");
  expect(
    longForm(table).map(({ measure, months, value }) => [
      measure,
      months,
      value.kind === "number" ? value.number : null,
    ]),
  ).toEqual([
    ["Elev", (6 * 12) / 52, 90],
    ["Elev", 3, 130],
    ["Elev", 12, 170],
    ["Elev", "last", 170],
  ]);
});

test("counts last digits", async () => {
  const values = Array.from({ length: 30 }, (_, i) => (i < 24 ? 100 + (i % 12) * 5 : 141 + i));
  const table = await ofText(`ID,Grade,Elev\n${values.map((value, i) => `H${i + 1},II,${value}`).join("\n")}\n`);
  const [digits] = lastDigits(table);
  expect(digits).toMatchObject({ column: "Elev", n: 30, roundShare: (24 + 2) / 30 });
  expect(digits!.counts.reduce((a, b) => a + b, 0)).toBe(30);
});

test("the empty template reads as a sheet with every role in place and no cases", async () => {
  const bytes = await templateSheet();
  expect(await templateSheet()).toEqual(bytes);
  const sheet = await readSheet(bytes, "next.xlsx");
  expect(() => readCases(sheet)).toThrow("next.xlsx: holds no cases; expected a heading row and one row a case");
  const filled = {
    ...sheet,
    rows: [
      ...sheet.rows,
      {
        number: 2,
        cells: [
          "H1",
          "C1",
          "left",
          "male",
          "12.5",
          "2026-01-02",
          "2026-01-03",
          "none",
          "40",
          "III",
          "closed",
          "open",
          "seen",
          "12",
          "10",
          "170",
          "175",
          "",
          "none",
          "A",
          "",
        ].map((text) => ({ text })),
      },
    ],
  };
  const table = readCases(filled);
  expect(table.columns.map(({ role }) => role)).toEqual([
    "id",
    "child",
    "side",
    "sex",
    "age",
    "date",
    "date",
    "other",
    "measurement",
    "grade",
    "firstTechnique",
    "finalTechnique",
    "other",
    "followUp",
    "measurement",
    "measurement",
    "measurement",
    "other",
    "complication",
    "operator",
    "note",
  ]);
  expect(table.cells.asked).toBe(0);
});

test("a new version is read with the answers to the one before; no text of a note is repeated", async () => {
  const sheetOf = (csv: string) => readSheet(new TextEncoder().encode(csv), "next.csv");
  const answers = { "Grade | grade | 3-4": "grade IV", "Success | value | x": "no", gone: "yes" };
  const before = await sheetOf(first);
  const next = newVersion(before, await sheetOf(second), { answers });
  expect(next.related).toBe(true);
  expect(next.answers).toEqual({ ...answers, "Severity grade | grade | 3-4": "grade IV" });
  expect(next.table.questions.map(({ id }) => id)).toEqual(["colour"]);
  expect(next.changes.added).toEqual([{ id: "H005", row: 2 }]);
  expect(newVersion(before, await sheetOf("ID,Grade,Success\nZ1,I,yes\nZ2,II,no\n")).related).toBe(false);

  const named = await sheetOf("ID,Name,Grade,Success,Note\nH1,Ann Zorvia,II,yes,moved\nH2,Bo Quell,II,no,\n");
  const notes = newVersion(await sheetOf("ID,Grade,Success,Note\nH1,II,yes,Zorvia was late\nH2,II,no,\n"), named);
  expect(notes.changes.changed.map(({ id, column: name }) => [id, name])).toEqual([["H1", "Note"]]);
  expect(JSON.stringify(notes.changes)).not.toMatch(/zorvia|late|"moved"/i);
});

test("rows of the table to share that stand alone are named by their new numbers", async () => {
  const shared = shareSafe(await ofText("ID,Sex,Grade\nH1,m,II\nH2,f,II\nH3,m,II\nH4,m,III\n"));
  expect(uniqueRows(shared)).toEqual(["2", "4"]);
});

test("a role set by hand follows its column over a new heading; an answer that no longer fits is listed and asked again", async () => {
  const raw = (csv: string) => readSheet(new TextEncoder().encode(csv), "next.csv");
  const before = await raw("ID,How it went,Outcome\nH1,well,x\nH2,badly,Y\nH3,well,N\n");
  const after = await raw("ID,Course,Outcome\nH1,well,3-4\nH2,badly,x\nH3,well,N\n");
  const answers = { "Outcome | value | x": "sort of", "How it went | value | well": "yes" };
  const fitting = { ...answers, "Outcome | value | x": "yes" };
  const next = newVersion(before, after, { roles: { "How it went": "success" }, answers: fitting });
  expect(next.roles).toEqual({ Course: "success" });
  expect(column(next.table, "Course")[0]).toEqual({ kind: "yesNo", yes: true });
  expect(next.changes.unfit).toEqual([]);

  const other = await raw("ID,How it went,Outcome\nH1,well,0.4 mm\nH2,badly,12 mm\nH3,well,x\n");
  const plain = newVersion(await raw("ID,Outcome\nH1,Y\n"), await raw("ID,Outcome\nH1,x\n"), {
    answers: { "Outcome | value | x": "sort of" },
  });
  expect(plain.changes.unfit).toEqual([{ question: "Outcome | value | x", answer: "sort of" }]);
  expect(plain.table.questions.map(({ id }) => id)).toContain("Outcome | value | x");
  expect(plain.answers).toEqual({});
  expect(newVersion(before, other, { answers: fitting }).related).toBe(true);
});
