// What stands beside the cases: counts, keys to the codes, excluded patients, a second series. All content invented.
import { expect, test } from "vitest";
import { asked, column, gridOf, ofRows, ofText } from "./sheet-of.js";
import { showValue } from "../../src/cases/show-value.js";

const cases = `ID,Age,Side,Grade,Tech,Success
H001,12,L,I,1,Y
H002,13,R,II,1,N
H003,14,L,III,2,Y
H004,15,R,IV,1,Y
`;
const data = cases.replaceAll(",1,", ",closed,").replaceAll(",2,", ",open,");

test.each([
  ["counts right below", "Grade,n,success,,,\nI,1,1,,,\nII,1,0,,,\n", "Grade | n | success"],
  ["counts after a blank line", ",,,,,\nGrade,n,success,,,\nI,1,1,,,\nII,1,0,,,\n", "Grade | n | success"],
  [
    "a table across",
    ",,,,,\nGrade,I,II,III,IV,Total\nn,1,1,1,1,4\nsuccess,1,0,1,1,3\n",
    "Grade | I | II | III | IV | Total",
  ],
  [
    "excluded patients",
    ",,,,,\nExcluded patients,,,,,\nID,Reason,Date,,,\nH005,refused,2020-01-02,,,\nH006,moved,2020-02-02,,,\n",
    "ID | Reason | Date",
  ],
  ["counts without names", ",,,,,\nclosed,3,,,,\nopen,1,,,,\n", "closed | 3"],
])("%s: another table is no case, and is asked about once", async (_, below, text) => {
  for (const table of [await ofText(data + below), await ofRows(gridOf(data + below))]) {
    expect(table.cases.map(({ id }) => id)).toEqual(["H001", "H002", "H003", "H004"]);
    const asks = table.questions.filter(({ choices }) => choices.includes("no cases: leave it out"));
    expect(asks.map((each) => each.text)).toEqual([text]);
    const rest = await ofText(data);
    expect(table.cases).toEqual(rest.cases);
    expect(table.setAside.some(({ why }) => why === "another table, below the cases")).toBe(true);
  }
});

test("a second series under its own names joins the cases on an answer, its columns matched by name", async () => {
  const sheet = `${data}\nSuccess,ID,Grade\nN,K001,II\nY,K002,III\n`;
  const apart = await ofText(sheet);
  expect(apart.cases).toHaveLength(4);
  const joined = await ofText(sheet, {
    answers: { "table | Success | ID | Grade": "cases too: columns matched by name" },
  });
  expect(joined.cases.map(({ id, row }) => [id, row])).toEqual([
    ["H001", 2],
    ["H002", 3],
    ["H003", 4],
    ["H004", 5],
    ["K001", 8],
    ["K002", 9],
  ]);
  expect(column(joined, "Success").map(showValue)).toEqual(["yes", "no", "yes", "yes", "no", "yes"]);
  expect(column(joined, "Grade").map(showValue).slice(4)).toEqual(["II", "III"]);
  const { understood, asked: open, setAside } = joined.cells;
  expect(understood + open + setAside).toBe(
    sheet
      .trimEnd()
      .split("\n")
      .flatMap((line) => line.split(",")).length,
  );
});

test("cases go on after a table between them", async () => {
  const table = await ofText(`${data}\nGrade,n\nI,1\nII,1\n\nH005,12,L,II,open,Y\nH006,12,R,II,open,N\n`);
  expect(table.cases.map(({ row }) => row)).toEqual([2, 3, 4, 5, 11, 12]);
});

test("a table to the right of an empty column is set aside and asked about, and joins on an answer", async () => {
  const sheet =
    "ID,Side,Grade,Success,,ID,Side,Grade,Success\nA1,L,I,Y,,B1,R,II,N\nA2,R,II,N,,B2,L,II,Y\nA3,L,II,Y,,,,,\n";
  const apart = await ofText(sheet);
  expect(apart.columns.map(({ name }) => name)).toEqual(["ID", "Side", "Grade", "Success"]);
  const asks = apart.questions.find(({ id }) => id === "table to the right")!;
  expect(asks).toMatchObject({ rows: [2, 3], text: "ID | Side | Grade | Success" });
  expect(asks.choices).toHaveLength(3);
  const joined = await ofText(sheet, { answers: { "table to the right": asks.choices[2]! } });
  expect(joined.cases.map(({ id, row }) => [id, row])).toEqual([
    ["A1", 2],
    ["B1", 2],
    ["A2", 3],
    ["B2", 3],
    ["A3", 4],
  ]);
  const kept = await ofText(sheet, { answers: { "table to the right": asks.choices[1]! } });
  expect(kept.columns).toHaveLength(8);
});

test("an empty column between the groups of one table parts nothing", async () => {
  const table = await ofText("ID,Side,Grade,,Tech,Success\nA1,L,I,,closed,Y\nA2,R,II,,open,N\nA3,L,II,,open,Y\n");
  expect(table.columns.map(({ name }) => name)).toEqual(["ID", "Side", "Grade", "Tech", "Success"]);
});

test.each([
  ["under the cases", `${cases}\n1 = closed\n2 = open\n`],
  ["in one line", `${cases}* Technique: 1 = closed; 2 = open\n`],
  ["above the cases", `Codes: 1 closed, 2 open\n${cases}`],
  ["as a table", `${cases}\nCode,Meaning\n1,closed\n2,open\n`],
  [
    "to the right",
    cases
      .split("\n")
      .map((line, i) => `${line}${line === "" ? "" : ([",,Code,Meaning", ",,1,closed", ",,2,open"][i] ?? "")}`)
      .join("\n"),
  ],
])("a key %s is offered as the meaning of the codes, and never used in silence", async (_, sheet) => {
  const table = await ofText(sheet);
  expect(table.cases).toHaveLength(4);
  expect(table.columns.find(({ name }) => name === "Tech")!.role).toBe("firstTechnique");
  expect(new Set(column(table, "Tech").map(({ kind }) => kind))).toEqual(new Set(["asked"]));
  const asks = table.questions.filter((each) => each.column === "Tech");
  expect(asks).toHaveLength(1);
  expect(asks[0]!.asks).toMatch(/^the key in row \d+ says 1 = closed, 2 = open: does it hold for "Tech"\?$/);
  const read = await ofText(sheet, { answers: { "Tech | key": "as the key says" } });
  expect(column(read, "Tech").map(showValue)).toEqual(["closed", "closed", "open", "closed"]);
  const other = await ofText(sheet, { answers: { "Tech | key": "it is not for this column" } });
  expect(asked(other, "Tech").map((each) => each.split(":")[0])).toEqual(["1", "2"]);
});

test("a key that names its column is not offered to another", async () => {
  const table = await ofText(`ID,Side,Result\nH1,1,1\nH2,2,2\nH3,1,1\nSide: 1 = left 2 = right,,\n`);
  expect(table.questions.filter(({ id }) => id.endsWith("| key")).map((each) => each.column)).toEqual(["Side"]);
});
