// Hostile but realistic sheets, S1 to S25 (those about finding the table, people and versions). All content invented.
import { expect, test } from "vitest";
import { quarantine } from "../../src/cases/quarantine.js";
import { asked, column, gridOf, ofRows, ofText, question, rawRows, rawText } from "./sheet-of.js";
import { readCases } from "../../src/cases/read-cases.js";

const merged = `Humerus project v7 FINAL,,,,,
,,,,,
,,Injury,,Follow-up,
ID,Side,Grade,Displ,Elev,Flex
H001,L,II,0.3,170,165
H002,R,III,0.5,160,150
`;

test("S1: title lines and a two-row heading, as text and as a workbook with merged cells", async () => {
  const merges = [
    { startRow: 2, startCol: 2, endRow: 2, endCol: 3 },
    { startRow: 2, startCol: 4, endRow: 2, endCol: 5 },
  ];
  for (const table of [await ofText(merged), await ofRows(gridOf(merged), { merges })]) {
    expect(table.header.rows).toEqual([3, 4]);
    expect(table.columns.map(({ name }) => name)).toEqual([
      "ID",
      "Side",
      "Injury: Grade",
      "Injury: Displ",
      "Follow-up: Elev",
      "Follow-up: Flex",
    ]);
    expect(table.cases.map(({ row }) => row)).toEqual([5, 6]);
    expect(table.setAside.map(({ row }) => row)).toEqual([1, 2]);
  }
});

test("S1: names merged downwards are names, not groups", async () => {
  const table = await ofText(
    "ID,Side,Injury,,Follow-up,\n,,Grade,Displ,Elev,Success\nH1,L,II,20,170,Y\nH2,R,III,50,160,N\n",
  );
  expect(table.header.rows).toEqual([1, 2]);
  expect(table.columns.map(({ name }) => name)).toEqual([
    "ID",
    "Side",
    "Injury: Grade",
    "Injury: Displ",
    "Follow-up: Elev",
    "Follow-up: Success",
  ]);
});

test("S2: totals, averages and notes under the data change nothing", async () => {
  const data = "ID,Side,Displ,Elev,Success\nH001,L,10,170,Y\nH002,R,20,160,N\n";
  const [plain, noted] = [await ofText(data), await ofText(`${data}Total,,51,,\nmean,,,44,\n* done by locum,,,,\n`)];
  expect(noted.cases).toEqual(plain.cases);
  expect(noted.setAside.map(({ row, why }) => [row, why])).toEqual([
    [4, "total or average, not a case"],
    [5, "total or average, not a case"],
    [6, "note, not a case"],
  ]);
});

test.each([
  ["a total without a word", ",13,,2,165\n", 1],
  ["a year between the cases", "2019,,,,\nH3,12,II,Y,160\n", 1],
])("S2: %s is set aside and asked about", async (_, lines, doubtful) => {
  const table = await ofText(`ID,Age,Grade,Success,Elev\nH1,12,II,Y,170\nH2,14,III,Y,160\nH4,14,III,N,160\n${lines}`);
  expect(table.cases.filter(({ id }) => /^H[1-4]$/.test(id))).toHaveLength(table.cases.length);
  const questions = table.questions.filter(({ choices }) => choices.includes("a case"));
  expect(questions).toHaveLength(doubtful);
  const back = await ofText(`ID,Age,Grade,Success,Elev\nH1,12,II,Y,170\nH2,14,III,Y,160\nH4,14,III,N,160\n${lines}`, {
    answers: { [questions[0]!.id]: "a case" },
  });
  expect(back.cases).toHaveLength(table.cases.length + 1);
});

test("S3: semicolons and decimal commas", async () => {
  const table = await ofText("ID;Side;Displ;Elev\n17;L;0,45;152,5\n18;R;0,40;150,5\n");
  expect(column(table, "Displ")[0]).toEqual({ kind: "number", number: 0.45 });
  expect(column(table, "Elev")[0]).toEqual({ kind: "number", number: 152.5 });
  expect(table.log.find(({ from }) => from === "0,45")).toMatchObject({
    to: "0.45",
    why: "decimal comma, read as 0.45",
    rows: [2],
  });
});

test.each([
  ["utf-8 with its mark", (text: string) => new TextEncoder().encode(`\uFEFF${text}`)],
  ["UTF-16", (text: string) => new Uint8Array(Buffer.from(`\uFEFF${text}`, "utf16le"))],
  ["UTF-16 without a mark", (text: string) => new Uint8Array(Buffer.from(text, "utf16le"))],
  [
    "Windows-1252",
    (text: string) => new Uint8Array(Buffer.from(text.replace("≥", ">").replaceAll("’", "\u0092"), "latin1")),
  ],
])("S4: %s, curly signs and odd spaces", async (_, encode) => {
  const table = await ofText(encode("ID;Größe;Elev;Grade\r\nH1;1,5;152°;II\r\nH2\u00a0;1,7;≥170;grade’ III\r\n"));
  expect(table.columns.map(({ name }) => name)).toEqual(["ID", "Größe", "Elev", "Grade"]);
  expect(column(table, "Elev")[0]).toEqual({ kind: "number", number: 152, unit: "°" });
  expect(table.cases[1]!.id).toBe("H2");
  expect(table.log.find(({ column: name, row }) => name === "ID" && row === 3)).toMatchObject({
    from: "H2\u00a0",
    to: "H2",
  });
  expect(question(table, "grade’ III").rows).toEqual([3]);
});

test("S14: the same child twice is shown side by side and dropped only on an answer", async () => {
  const sheet =
    "ID,Side,Injury date,Grade,Success\nH011,L,2020-02-01,II,Y\nH012,L,2020-03-01,II,Y\nH012 ,L,2020-03-01,III,Y\n";
  const table = await ofText(sheet);
  expect(table.cases).toHaveLength(3);
  const twice = question(table, "H012 left");
  expect(twice).toMatchObject({
    rows: [3, 4],
    asks: "H012 left stands in 2 rows: the same case twice? They differ in Grade (II, III).",
  });
  const merged2 = await ofText(sheet, { answers: { [twice.id]: "the same case: keep the last" } });
  expect(merged2.cases.map(({ row }) => row)).toEqual([2, 4]);
  expect(merged2.setAside).toEqual([{ row: 3, text: "H012 left", why: "the same case as row 4, as answered" }]);
  const other = await ofText(sheet.replace("H012 ,L,2020-03-01", "H012 ,L,2021-09-09"));
  expect(question(other, "H012 left").asks).toBe(
    "H012 left stands in 2 rows with different dates: several injuries, or visits of one case?",
  );
});

test("S15: both limbs in one row become two limbs of one child on an answer; numbers with suffixes are one child", async () => {
  const sheet =
    "ID,Side,Grade,Elev\nH020,L,II,170\nH020b,R,III,160\nH021 L,L,II,165\nH021 R,R,I,165\nH022,B,II,160/150\nH023,L,I,170\nH023,R,I,171\n";
  const table = await ofText(sheet);
  expect(new Set(table.cases.map(({ child }) => child))).toEqual(new Set(["H020", "H021", "H022", "H023"]));
  expect(table.cases.map(({ id }) => id)).toEqual([
    "H020",
    "H020b",
    "H021 L",
    "H021 R",
    "H022",
    "H023 left",
    "H023 right",
  ]);
  const answers = { [question(table, "B").id]: "two limbs", [question(table, "160/150").id]: "left 160, right 150" };
  const split = await ofText(sheet, { answers });
  expect(
    split.cases.filter(({ child }) => child === "H022").map(({ id, values }) => [id, values[1], values[3]]),
  ).toEqual([
    ["H022 left", { kind: "text", text: "left" }, { kind: "number", number: 160 }],
    ["H022 right", { kind: "text", text: "right" }, { kind: "number", number: 150 }],
  ]);
});

test("S18: colours and comments are asked about, in a text copy and in a workbook", async () => {
  expect((await ofText("ID,Grade\nH1,II\nH2,III\n")).questions).toMatchObject([{ id: "colour", rows: [], column: "" }]);
  const table = await ofRows(
    [
      ["ID", "Grade"],
      ["H1", "II"],
      ["H2", "III"],
    ],
    {
      cells: new Map([
        [
          "1,0",
          {
            value: "H1",
            type: "string",
            style: { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: "FF0000" } } },
          },
        ],
        ["2,1", { value: "III", type: "string", comment: { text: "refused" } }],
      ]),
    },
  );
  expect(table.questions.map(({ id, rows }) => [id, rows])).toEqual([
    ["coloured cells", [2]],
    ["comment | refused", [3]],
  ]);
});

test("S21: identifiers are withheld everywhere, with new numbers where nothing else names a case", async () => {
  const table = await ofText(
    'Name,MRN,DOB,Phone,Notes,Grade,Image no\nJonas Zorvia,1234567,2009-01-02,07700 900123,"Jonas\'s mum, school X",II,IM-99812\nAda Quell,1234568,2008-01-02,07700 900124,ok,III,IM-99813\nJonas Zorvia,1234567,2009-01-02,07700 900123,other arm,II,IM-99814\n* Zorvia twice\n',
  );
  expect(table.identifiers).toEqual(["Name", "MRN", "DOB", "Phone", "Image no"]);
  expect(table.cases.map(({ id, child }) => [id, child])).toEqual([
    ["case 1", "child 1"],
    ["case 2", "child 2"],
    ["case 3", "child 1"],
  ]);
  expect(JSON.stringify(table)).not.toMatch(/Jonas|Zorvia|Quell|123456|900123|2009-01|9981/i);
  expect(quarantine(["Jonas Zorvia"])("JONAS's mum")).toBe("[withheld]'s mum");
});

test.each(["Initial displacement (%)", "Contact sport", "Birth weight", "Missed school days", "Parent score", "GP"])(
  'S21: "%s" names nobody and is read',
  async (heading) => {
    const table = await ofText(`ID,${heading},Grade\nH1,20,II\nH2,30,III\n`);
    expect(table.identifiers).toEqual([]);
  },
);

test("S21: a file name that holds a name is withheld and asked about", async () => {
  const raw = await rawText("Name,Grade\nAnn Zorvia,II\nBo Quell,III\n");
  const table = readCases({ ...raw, file: "Zorvia series.csv" });
  expect(table.file).toBe("[withheld] series.csv");
  expect(table.questions.map(({ id }) => id)).toContain("file name");
});

test("S24: hidden rows, hidden columns and other sheets are named; a hidden row leaves only on an answer", async () => {
  const rows = [
    ["ID", "Grade", "Elev"],
    ["H1", "II", 170],
    ["H2", "III", 160],
    ["H3", "I", 150],
  ];
  const raw = await rawRows(rows, { rowDefs: new Map([[2, { hidden: true }]]), columns: [{}, {}, { hidden: true }] });
  const table = readCases({ ...raw, otherSheets: ["old cases"] });
  expect(table.cases).toHaveLength(3);
  expect(table.questions.map(({ id, rows: at, text }) => [id, at, text])).toEqual([
    ["hidden rows", [3], ""],
    ["hidden columns", [], "Elev"],
    ["other sheets", [], "old cases"],
  ]);
  const left = readCases(raw, { answers: { "hidden rows": "leave them out" } });
  expect(left.cases.map(({ id }) => id)).toEqual(["H1", "H3"]);
  expect(left.setAside).toEqual([{ row: 3, text: "H2 | III | 160", why: "hidden row, left out as answered" }]);
});

test("S24: the last visit is compared with the latest", async () => {
  const table = await ofText("ID,Side,Elev 3m,Elev 6m,Elev 12m,Elev last\nH1,L,100,120,150,150\nH2,R,90,110,,120\n");
  expect(asked(table, "Elev last")).toEqual(["120, 110: 3"]);
});

test("study numbers: gaps, lost zeros and numbers in scientific form are asked about", async () => {
  const ids = ["001", "002", "003", "4", "005", "006", "1E5", "008", "010"];
  const table = await ofText(`ID,Grade\n${ids.map((id) => `${id},II`).join("\n")}\n,III\n`);
  expect(asked(table, "ID")).toEqual(["007, 009: ", "4: 5", "1E5: 8", ": 11"]);
});

test("a sheet without a heading is read by column numbers, and that is asked", async () => {
  const table = await ofText("H1,L,20,II,Y\nH2,R,30,III,N\nH3,R,40,III,N\n");
  expect(table.header.rows).toEqual([]);
  expect(table.cases).toHaveLength(3);
  expect(table.columns.map(({ name }) => name)).toEqual(["column 1", "column 2", "column 3", "column 4", "column 5"]);
  expect(table.questions.map(({ id }) => id)).toContain("heading");
});

test("a table turned on its side, and a field too many, are asked about", async () => {
  const turned = await ofText("ID,H1,H2,H3\nSide,L,R,L\nGrade,II,III,II\nSuccess,Y,N,Y\n");
  expect(turned.questions.map(({ id }) => id)).toContain("turned");
  const sheet = "ID;Side;Grade;Elev;Complications\nH1;L;II;170;none\nH2;R;III;160;pin out; stiff\n";
  const more = await ofText(sheet);
  expect(column(more, "Complications")[1]!.kind).toBe("asked");
  expect(column(more, "Elev")[1]).toEqual({ kind: "number", number: 160 });
  const { id, choices } = question(more, "pin out; stiff");
  expect(choices).toEqual(["one cell: pin out; stiff", "leave these cells out"]);
  const joined = await ofText(sheet, { answers: { [id]: choices[0]! } });
  expect(column(joined, "Complications")[1]).toEqual({ kind: "list", items: ["pin out", "stiff"] });
});

test("one row a visit is asked once, not once a child", async () => {
  const rows = ["H1", "H2", "H3"].flatMap((id) => ["3m", "6m"].map((visit) => `${id},L,${visit},150`));
  const table = await ofText(`ID,Side,Visit,Elev\n${rows.join("\n")}\n`);
  expect(asked(table, "ID")).toEqual([": 2 3 4 5 6 7"]);
  const last = await ofText(`ID,Side,Visit,Elev\n${rows.join("\n")}\n`, {
    answers: { "ID | several rows a case": "the same case: keep the last" },
  });
  expect(last.cases.map(({ row }) => row)).toEqual([3, 5, 7]);
});
