// Motion with its side, millimetres beside a width, words of other languages, awkward values. All content invented.
import { expect, test } from "vitest";
import { inspection, inspectionText } from "../../src/cases/inspection.js";
import { showValue } from "../../src/cases/show-value.js";
import { asked, column, ofText, question } from "./sheet-of.js";

test.each([
  "ROM flex",
  "Abd",
  "ER",
  "elev. (deg)",
  "Ext rot",
  "Forward elevation at FU",
  "Beweglichkeit",
  "Elev last review",
])('angles of motion under "%s" are measurements', async (heading) => {
  const table = await ofText(`ID,${heading},Grade\nH1,170,II\nH2,160°,III\nH3,90,II\n`);
  expect(table.columns[1]).toMatchObject({ role: "measurement" });
  expect(column(table, heading).map((value) => value.kind)).toEqual(["number", "number", "number"]);
});

test("the limb that a heading of motion names is told", async () => {
  const table = await ofText("ID,Flex R,Flex L,Elev other side,Elev\nH1,170,165,175,160\nH2,160,160,170,150\n");
  expect(table.columns.slice(1).map(({ limb }) => limb)).toEqual(["right", "left", "other", "treated"]);
});

test("two values in a cell under a heading that gives their order are one question; the row's side takes its own", async () => {
  const sheet = "ID,Side,Flexion R/L\nH1,L,170/165\nH2,R,160/150\n";
  const table = await ofText(sheet);
  expect(asked(table, "Flexion R/L")).toEqual([": 2 3"]);
  const read = await ofText(sheet, { answers: { "Flexion R/L | pair": "right then left, as headed" } });
  expect(column(read, "Flexion R/L").map(showValue)).toEqual(["165", "160"]);
});

test.each([
  ["Fall,Alter,Geschlecht,Seite,Grad,Therapie,Erfolg", "1,12,w,li,II,geschlossen,ja", "2,13,m,re,III,offen,nein"],
  ["Caso,Edad,Sexo,Lado,Grado,Tratamiento,Éxito", "1,12,f,izq,II,cerrada,si", "2,13,m,der,III,abierta,no"],
  ["Cas,Âge,Sexe,Côté,Stade,Traitement,Succès", "1,12,f,g,II,fermé,oui", "2,13,m,d,III,ouvert,non"],
])("reads the headings of %s", async (heading, ...lines) => {
  const table = await ofText(`${heading}\n${lines.join("\n")}\n`);
  const roles = table.columns.map(({ role }) => role);
  expect(roles).toEqual(["id", "age", "sex", "side", "grade", "firstTechnique", "success"]);
  expect(column(table, heading!.split(",")[3]!).map(showValue)).toEqual(["left", "right"]);
});

test("reads the headings of an emergency form, and its dates with the month by name", async () => {
  const table = await ofText(
    "Nr;Unfall am;Schweregrad;Erstbehandlung;Ausheilung in guter Stellung\n1;22. März 2018;I;geschlossene Reposition;ja\n2;2. Jän 2019;II;offene Reposition;nein\n",
  );
  expect(table.columns.map(({ role }) => role)).toEqual(["id", "date", "grade", "firstTechnique", "success"]);
  expect(column(table, "Unfall am").map(showValue)).toEqual(["2018-03-22", "2019-01-02"]);
});

test("millimetres beside a width are offered in per cent, both stay", async () => {
  const sheet = "ID,Displ (mm),Shaft width (mm),Grade\nH1,12,24,II\nH2,>8,20,II\nH3,5,,I\n";
  const table = await ofText(sheet);
  expect(asked(table, "Displ (mm)")).toEqual([": "]);
  const both = await ofText(sheet, {
    answers: { "Displ (mm) | percent of Shaft width (mm)": "add the percentage as a column of its own" },
  });
  expect(column(both, "Displ (mm)").map(showValue)).toEqual(["12 mm", ">8 mm", "5 mm"]);
  expect(column(both, "Displ (mm), % of Shaft width (mm)").map(showValue)).toEqual([
    "50 percent",
    ">40 percent",
    "not known",
  ]);
});

test("a cell in mm among percentages is converted only where the width is known, and on an answer", async () => {
  const sheet = "ID,Displacement,Width\nH1,12 mm,48\nH2,40%,50\nH3,12 mm,\nH4,35%,50\nH5,20%,50\n";
  const read = await ofText(sheet, { answers: { "Displacement | unit | 12 mm": 'per cent of "Width"' } });
  expect(column(read, "Displacement").map(showValue)).toEqual([
    "25 percent",
    "40 percent",
    "not known",
    "35 percent",
    "20 percent",
  ]);
});

test("shares and per cents without a sign in one column are asked apart", async () => {
  const table = await ofText("ID,Displacement,Grade\nH1,0.35,II\nH2,45,II\nH3,0.8,IV\nH4,20,II\n");
  expect(asked(table, "Displacement")).toEqual(["0.35: 2", "0.8: 4"]);
  const read = await ofText("ID,Displacement,Grade\nH1,0.35,II\nH2,45,II\nH3,0.8,IV\nH4,20,II\n", {
    answers: { "Displacement | unit | 0.35": "a share, 35 per cent" },
  });
  expect(showValue(column(read, "Displacement")[0]!)).toBe("35");
});

test("thirds with a bound or a range, weekdays, footnote signs, ages in fractions", async () => {
  const one = async (heading: string, cells: readonly string[]): Promise<string[]> => {
    const sheet = `ID;Sex;${heading}\n${cells.map((cell, i) => `H${i + 1};m;${cell}`).join("\n")}\n`;
    return column(await ofText(sheet), heading).map(showValue);
  };
  expect(await one("Displ", ["> 2/3", "<1/3", "1/3 - 2/3", "1/2"])).toEqual([">0.6667", "<0.3333", "asked", "0.5"]);
  expect(await one("Injury date", ["Tue 3/4/18", "Sun 4/3/18"])).toEqual(["2018-04-03", "2018-03-04"]);
  expect(await one("Grade", ["II°", "III¹", "II", "x"])).toEqual(["II", "asked", "II", "asked"]);
  expect(await one("Age", ["13 & 1/2", "13y11/12", "12-13", "12"])).toEqual(["13.5", "13.9167", "asked", "12"]);
  expect(await one("Side", ["L", "rt shoulder", "both - L worse", "R"])).toEqual(["left", "asked", "asked", "right"]);
  expect(await one("Redisplaced", ["none", "nil", "Y", "N"])).toEqual(["no", "no", "yes", "no"]);
  expect(await one("Success", ["'Y", "N", "Y/N", "Y"])).toEqual(["yes", "no", "asked", "yes"]);
});

test("the key in a heading is offered for its cells", async () => {
  const table = await ofText('ID,"Success (1=yes, 0=no)"\nH1,1\nH2,0\nH3,1\n');
  const { id } = table.questions.find(({ column: name }) => name.startsWith("Success"))!;
  const read = await ofText('ID,"Success (1=yes, 0=no)"\nH1,1\nH2,0\nH3,1\n', { answers: { [id]: "as the key says" } });
  expect(column(read, "Success (1=yes, 0=no)").map(showValue)).toEqual(["yes", "no", "yes"]);
});

test("last digits, and the cases behind a question about several, are printed", async () => {
  const lines = Array.from({ length: 24 }, (_, i) => `H${i + 1},${100 + (i % 12) * 5},${i < 2 ? "x" : "Y"}`);
  const table = await ofText(`ID,Elev,Success\n${lines.join("\n")}\n`);
  expect(inspection(table)).toMatchObject({ lastDigits: [{ column: "Elev", n: 24, roundShare: 1 }] });
  expect(inspectionText(table)).toContain("24 of 24 end in 0 or 5");
  expect(question(table, "x").cases).toEqual(["H1", "H2"]);
  const only = await ofText(`ID,Elev,Success\n${lines.join("\n")}\n`, {
    answers: { "Success | value | x @ H2": "no" },
  });
  expect(column(only, "Success").map(showValue).slice(0, 3)).toEqual(["asked", "no", "yes"]);
});
