// What decides who is counted, and by which column: asked or said, never settled in silence. All content invented.
import { writeXlsx } from "hucre";
import { expect, test } from "vitest";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { showValue } from "../../src/cases/show-value.js";
import { draftPlan } from "../../src/plan/draft-plan.js";
import { judge } from "../../src/plan/judge.js";
import { asked, column, ofRows, ofText, question } from "./sheet-of.js";

const rows = (n: number, rest: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => `H${String(i + 1).padStart(2, "0")},${rest(i)}`).join("\n");

test("not applicable under a success is neither a success nor a failure", () => {
  const value = { kind: "missing", reason: "notApplicable" } as const;
  expect(judge({ column: "Success", "=": true }, () => value)).toBe("unknown");
  expect(judge({ column: "Reason", "=": "refracture" }, () => value)).toBe("no");
});

test("a broken formula, and one saved without its result, are asked in any column", async () => {
  const table = await ofText("ID,Grade,Success\nH1,#N/A,Y\nH2,II,#REF!\nH3,II,#NV\n");
  expect(asked(table, "Grade")).toEqual(["#N/A: 2"]);
  expect(asked(table, "Success")).toEqual(["#REF!: 3", "#NV: 4"]);
  const cells = new Map([["1,2", { value: null, type: "formula" as const, formula: 'IF(B2="II","Y","N")' }]]);
  const workbook = await ofRows(
    [
      ["ID", "Grade", "Success"],
      ["H1", "II", null],
      ["H2", "III", "N"],
    ],
    { cells },
  );
  expect(column(workbook, "Success").map(showValue)).toEqual(["asked", "no"]);
});

test("a value merged over several rows holds for all of them, and the log says so", async () => {
  const sheet = [
    ["ID", "Grade", "Success"],
    ["H1", "II", "Y"],
    ["H2", null, "N"],
    ["H3", null, "Y"],
    ["H4", "III", "Y"],
  ];
  const table = await ofRows(sheet, { merges: [{ startRow: 1, startCol: 1, endRow: 3, endCol: 1 }] });
  expect(column(table, "Grade").map(showValue)).toEqual(["II", "II", "II", "III"]);
  expect(table.log).toContainEqual({
    ...{ row: 3, rows: [3, 4], column: "Grade", from: "", to: "II" },
    why: "one merged cell holds for these rows",
  });
});

test("a grade typed once above its block is asked, not lost and not filled in silence", async () => {
  const sheet = "ID,Grade,Success\nH1,I,Y\nH2,,Y\nH3,,N\nH4,II,Y\nH5,,Y\nH6,III,N\nH7,,N\n";
  const table = await ofText(sheet);
  expect(asked(table, "Grade")).toEqual([": 3 4 6 8"]);
  const filled = await ofText(sheet, { answers: { "Grade | blanks below": "the same as above" } });
  expect(column(filled, "Grade").map(showValue)).toEqual(["I", "I", "I", "II", "II", "III", "III"]);
});

test("a grade named only in lines between the cases is asked", async () => {
  const sheet = "ID,Side,Success\nGrade II,,\nH1,L,Y\nH2,R,N\nGrade III,,\nH3,L,Y\nH4,R,N\n";
  const table = await ofText(sheet);
  const { id } = question(table, "Grade II, Grade III");
  expect(() => draftPlan(table)).toThrow('answer the question "grades in sub-headings"');
  const read = await ofText(sheet, { answers: { [id]: "the grade of the rows below" } });
  expect(column(read, "Grade").map(showValue)).toEqual(["II", "II", "III", "III"]);
  const { understood, asked: open, setAside } = read.cells;
  expect(understood + open + setAside).toBe(7 * 3 + 4);
});

test("a mark in one of several columns named for grades, techniques or sides is one column", async () => {
  const table = await ofText(
    `ID,L,R,Gr I,Gr II,Gr III,Closed,Open,Success\n${rows(6, (i) => `${["x,", ",x"][i % 2]},${["x,,", ",x,", ",,x"][i % 3]},${["x,", ",x"][i % 2]},Y`)}\n`,
  );
  expect(column(table, "Grade").map(showValue)).toEqual(["I", "II", "III", "I", "II", "III"]);
  expect(column(table, "Technique").map(showValue)).toEqual(["closed", "open", "closed", "open", "closed", "open"]);
  expect(column(table, "Side").map(showValue)).toEqual(["left", "right", "left", "right", "left", "right"]);
  expect(table.questions.filter(({ id }) => id.startsWith("remark | ")).map(({ asks }) => asks)).toContain(
    '"Gr I", "Gr II", "Gr III" hold one mark a row and were read as one column "Grade"',
  );
});

test("an inclusion column, a loss and a conversion decide who is counted", async () => {
  const table = await ofText(
    "ID,Grade,Technique,Converted to open,Included,Lost to FU,Excluded,Success\nH1,I,closed,N,Y,N,,Y\nH2,II,closed,Y,Y,N,n,N\nH3,II,open,N,no - refracture,N,path #,Y\nH4,III,closed,N,Y,Y,N,\nH5,III,open,N,N,N,1,Y\n",
  );
  const { plan } = draftPlan(table);
  expect(plan.exclusions.map(({ name, rule }) => [name, rule])).toEqual([
    ["path #", { column: "Excluded", "=": "path #" }],
    ["Included: no", { column: "Included", "=": false }],
  ]);
  expect(plan.lost).toEqual({ column: "Lost to FU", "=": true });
  expect(column(table, "Final technique").map(showValue)).toEqual(["closed", "open", "open", "closed", "open"]);
  expect(plan.technique).toMatchObject({ first: "Technique", final: "Final technique" });
  expect(asked(table, "Included")).toEqual([": 4 6"]);
  expect(asked(table, "Excluded")).toEqual(["1: 6"]);
});

test("two columns of grades or successes that differ are asked about, the later one offered first", async () => {
  const sheet =
    "ID,Grade (SHO),Grade (consultant),Success 3/12,Success final\nH1,I,I,Y,Y\nH2,II,III,N,Y\nH3,III,III,Y,N\n";
  const table = await ofText(sheet);
  expect(column(table, "Grade (SHO)").map(showValue)).toEqual(["I", "asked", "III"]);
  expect(column(table, "Success 3/12").map(showValue)).toEqual(["yes", "asked", "asked"]);
  const { id, choices } = question(table, "Success 3/12, Success final");
  expect(choices).toEqual(["Success final", "Success 3/12"]);
  const final = await ofText(sheet, { answers: { [id]: "Success final" } });
  expect(final.columns.map(({ role }) => role)).toEqual(["id", "grade", "grade", "other", "success"]);
  expect(draftPlan(final).plan.success[0]!.rule).toEqual({ column: "Success final", "=": true });
  const alike = await ofText("ID,Success,Failed\nH1,Y,N\nH2,N,Y\n");
  expect(alike.questions.map(({ id: each }) => each)).toEqual(["colour"]);
});

test("while a case may leave or stands twice, its outcome is held back", async () => {
  const twice = await ofText("ID,Side,Success\nH1,L,Y\nH2,R,N\nH2,R,Y\n");
  expect(column(twice, "Success").map(showValue)).toEqual(["yes", "asked", "asked"]);
  const sheet = [
    ["ID", "Success"],
    ["H1", "Y"],
    ["H2", "N"],
    ["H3", "Y"],
  ];
  const hidden = await ofRows(sheet, { rowDefs: new Map([[2, { hidden: true }]]) });
  expect(column(hidden, "Success").map(showValue)).toEqual(["yes", "asked", "yes"]);
  const struckCell = { value: "H3", type: "string" as const, style: { font: { strikethrough: true } } };
  const more = { cells: new Map([["3,0", struckCell]]) };
  const struck = await ofRows(sheet, more);
  expect(struck.questions.map(({ id, rows: at }) => [id, at])).toEqual([["struck rows", [4]]]);
  expect(column(struck, "Success").map(showValue)).toEqual(["yes", "no", "asked"]);
  const left = await ofRows(sheet, more, { answers: { "struck rows": "leave them out" } });
  expect(left.cases.map(({ id }) => id)).toEqual(["H1", "H2"]);
});

test("numbers that start again in each centre can be told apart by it", async () => {
  const sheet = `ID,Centre,Side,Success\n${["North", "South"].flatMap((centre) => [1, 2, 3, 4].map((i) => `${i},${centre},L,Y`)).join("\n")}\n`;
  const asks = (await ofText(sheet)).questions.find(({ id }) => id === "ID | several rows a case")!;
  const choice = asks.choices.find((each) => each.includes("Centre"))!;
  const table = await ofText(sheet, { answers: { [asks.id]: choice } });
  expect(new Set(table.cases.map(({ child }) => child)).size).toBe(8);
  expect(table.questions.map(({ id }) => id)).toEqual(["colour"]);
});

test("a number with bis or other side beside its twin is one child, and is asked", async () => {
  const sheet = "ID,Side,Success\n12,L,Y\n12bis,R,N\n20,L,Y\n20 other side,R,Y\n21,R,Y\n";
  const table = await ofText(sheet);
  expect(table.cases.map(({ child }) => child)).toEqual(["12", "12", "20", "20", "21"]);
  const apart = await ofText(sheet, { answers: { "ID | other limb | 12bis": "another child" } });
  expect(apart.cases.map(({ child }) => child)).toEqual(["12", "12bis", "20", "20", "21"]);
});

test("one record number under two study numbers is asked about without showing it", async () => {
  const sheet = "ID,MRN,Side,Success\nH1,7654321,L,Y\nH2,7654322,R,N\nH3,7654321,R,Y\nH4,7654323,L,Y\n";
  const table = await ofText(sheet);
  expect(asked(table, "MRN")).toEqual(["H1, H3: 2 4"]);
  expect(JSON.stringify(table)).not.toContain("7654321");
  const one = await ofText(sheet, { answers: { "MRN | one child | H1, H3": "one child" } });
  expect(new Set(one.cases.map(({ child }) => child)).size).toBe(3);
});

test("a grade beyond the run of the others in a row or two is asked, page numbers are no cases", async () => {
  const grades = ["I", "II", "III", "IV"];
  const table = await ofText(
    `ID,Side,Grade,Success\n${rows(16, (i) => `L,${i === 3 ? "5" : i === 7 ? "0" : grades[i % 4]},Y`)}\nPage 1 of 3,,,\n`,
  );
  expect(asked(table, "Grade")).toEqual(["V: 5", "0: 9"]);
  expect(table.cases).toHaveLength(16);
});

test.each([
  ["closed", ["closed", "MUA", "CRIF", "geschlossen", "konservativ", "fermé"]],
  ["assisted", ["CRPP", "CR+PF", "K-Draht", "percutaneous pinning", "closed with wire"]],
  ["open", ["open", "ORIF", "offen", "foyer ouvert"]],
])("techniques of the ladder: %s", async (step, names) => {
  const table = await ofText(`ID,Grade,Technique,Success\n${rows(names.length, (i) => `II,${names[i]},Y`)}\n`);
  const placed = draftPlan(table).plan.technique!;
  expect(placed[step as "closed"]).toEqual(names.map((name) => name.toLowerCase()));
});

test("a cell with two steps is an earlier attempt, with the steps it names as choices", async () => {
  const table = await ofText(
    "ID,Technique\nH1,closed/open\nH2,MUA → K-wire → ORIF\nH3,attempted MUA - ORIF\nH4,open\n",
  );
  expect(question(table, "closed/open").choices).toEqual([
    "first technique closed",
    "first technique open",
    "not known",
  ]);
  expect(question(table, "MUA → K-wire → ORIF").choices).toEqual([
    "first technique closed",
    "first technique assisted",
    "first technique open",
    "not known",
  ]);
  expect(question(table, "attempted MUA - ORIF").choices[0]).toBe("first technique closed");
});

test("an outcome typed for a case that another column calls lost is asked", async () => {
  const sheet = "ID,Grade,Success,Lost to FU\nH1,I,Y,N\nH2,II,Y,Y\nH3,II,,Y\n";
  const table = await ofText(sheet);
  expect(asked(table, "Lost to FU")).toEqual([": 3"]);
  const counted = await ofText(sheet, {
    answers: { "Lost to FU | lost with an outcome": "the outcome was seen before: count it" },
  });
  expect(column(counted, "Lost to FU").map(showValue)).toEqual(["no", "no", "yes"]);
});

test("coloured rows, when they are few, hold their outcome back", async () => {
  const red = { value: "H2", type: "string" as const, style: { font: { color: { rgb: "FFFF0000" } } } };
  const sheet = [
    ["ID", "Success"],
    ["H1", "Y"],
    ["H2", "N"],
    ["H3", "Y"],
  ];
  const table = await ofRows(sheet, { cells: new Map([["2,0", red]]) });
  expect(column(table, "Success").map(showValue)).toEqual(["yes", "asked", "yes"]);
  const nothing = await ofRows(
    sheet,
    { cells: new Map([["2,0", red]]) },
    { answers: { "coloured cells": "it changes nothing" } },
  );
  expect(column(nothing, "Success").map(showValue)).toEqual(["yes", "no", "yes"]);
});

test("tables side by side under their groups join with the group as a column", async () => {
  const sheet = [
    ["CLOSED", null, null, null, "OPEN", null, null],
    ["ID", "Grade", "Success", null, "ID", "Grade", "Success"],
    ["C1", "I", "Y", null, "O1", "II", "N"],
    ["C2", "II", "N", null, "O2", "III", "Y"],
    ["C3", "II", "Y", null, "O3", "III", "Y"],
  ];
  const table = await ofRows(sheet);
  const asks = table.questions.find(({ id }) => id === "table to the right")!;
  expect(column(table, "CLOSED: Success").map(showValue)).toEqual(["asked", "asked", "asked"]);
  const joined = await ofRows(sheet, {}, { answers: { [asks.id]: asks.choices[2]! } });
  expect(joined.cases.map(({ id }) => id)).toEqual(["C1", "O1", "C2", "O2", "C3", "O3"]);
  expect(column(joined, "Technique").map(showValue)).toEqual(["closed", "open", "closed", "open", "closed", "open"]);
});

test("sheets named for their grade are read with it", async () => {
  const rowsOf = (start: number) => [
    ["ID", "Side", "Technique", "Success"],
    ...[0, 1].map((i) => [`H${start + i}`, "L", "closed", "Y"]),
  ];
  const bytes = await writeXlsx({
    sheets: ["Grade II", "Grade III"].map((name, i) => ({ name, rows: rowsOf(i * 2) })),
  });
  const raw = await readSheet(bytes, "grades.xlsx");
  expect(() => draftPlan(readCases(raw))).toThrow('answer the question "sheets with the same heading"');
  const answers = { "sheets with the same heading": "all of them, one under the other" };
  const table = readCases(raw, { answers });
  expect(column(table, "Grade").map(showValue)).toEqual(["II", "II", "III", "III"]);
});

test("a blank success beside a status is asked about, with the ways out of the flow as choices", async () => {
  const sheet =
    "ID,Grade,Success,Status\nH1,I,Y,complete\nH2,II,,withdrawn\nH3,II,,ongoing\nH4,II,,died\nH5,I,N,complete\n";
  const table = await ofText(sheet);
  expect(asked(table, "Success")).toEqual(["lost: 3", "ongoing: 4", "died: 5"]);
  const answers = {
    "Success | blank with a status | lost": "lost",
    "Success | blank with a status | ongoing": "not yet followed up",
    "Success | blank with a status | died": "died",
  };
  const answered = await ofText(sheet, { answers });
  expect(column(answered, "Success").map(showValue)).toEqual(["yes", "lost", "not done", "died", "no"]);
});
