// Who treated, who was treated, who typed: no name, number or address of anybody leaves the reader. All names invented.
import fc from "fast-check";
import { expect, test } from "vitest";
import { cellMap } from "../../src/cases/cell-map.js";
import { inspection, inspectionText } from "../../src/cases/inspection.js";
import { namesInText } from "../../src/cases/names-in-text.js";
import { maskText } from "../../src/cases/mask-text.js";
import { newVersion } from "../../src/cases/new-version.js";
import { readCases } from "../../src/cases/read-cases.js";
import { shareSafe } from "../../src/cases/share-safe.js";
import type { CaseTable, RawSheet } from "../../src/cases/types.js";
import { showValue } from "../../src/cases/show-value.js";
import { column, ofText, rawText } from "./sheet-of.js";

/** Everything of a table that is shown, saved or exported, in lower case. */
function shown(table: CaseTable): string {
  const parts = [table, inspection(table), cellMap(table), shareSafe(table)].map((part) => JSON.stringify(part));
  return [...parts, inspectionText(table)].join("\n").toLowerCase();
}

const roleOf = (table: CaseTable, name: string): string | undefined =>
  table.columns.find((each) => each.name === name)?.role;

test.each(["Surgeon", "Consultant", "Operator", "Operated by", "Chirurg"])(
  'operators under "%s" are told apart by letters, codes and ranks stay',
  async (heading) => {
    const people = ["Mr Zorvia", "quell", "ZORVIA", "B", "registrar", "Dr. Quell / Brumax", "Surgeon 2", ""];
    const table = await ofText(`ID,${heading},Grade\n${people.map((one, i) => `H${i + 1},${one},II`).join("\n")}\n`);
    expect(roleOf(table, heading)).toBe("operator");
    expect(column(table, heading).map(showValue)).toEqual([
      "Surgeon A",
      "Surgeon B",
      "Surgeon A",
      "B",
      "registrar",
      "Surgeon B and Surgeon C",
      "Surgeon 2",
      "blank",
    ]);
    expect(shown(table)).not.toMatch(/zorvia|quell|brumax/);
  },
);

test("operators keep their letters in the next version, and names in headings and raters are withheld", async () => {
  const before = await rawText("ID,Surgeon,Zorvia grade,Grade\nH1,Zorvia,II,II\nH2,Quell,III,III\n");
  const after = await rawText("ID,Surgeon,Zorvia grade,Grade\nH3,Brumax,II,II\nH2,Quell,III,III\nH1,Zorvia,II,II\n");
  const next = newVersion(before, after);
  expect(next.changes.changed).toEqual([]);
  expect(column(next.table, "Surgeon").map(showValue)).toEqual(["Surgeon C", "Surgeon B", "Surgeon A"]);
  expect(next.table.columns.map(({ name }) => name)).toEqual(["ID", "Surgeon", "[withheld] grade", "Grade"]);
});

test.each([
  ["Dr Zorvia's patients", ["Zorvia"]],
  ["Cases of Prof. A. Quell-Tyndil 2019", ["Quell", "Tyndil"]],
  ["Entered by Ann Zorvia", ["Ann", "Zorvia"]],
  ["Jonas's mum rang", ["Jonas"]],
  ["Zorvia, Ann", ["Zorvia", "Ann"]],
  ["surgeon: Brumax", ["Brumax"]],
  ["Dr_Zorvia_cases", ["Zorvia"]],
  ["Humerus project v7 FINAL", []],
  ["Children's hospital, closed reduction", []],
  ["Success by Grade", []],
  ["Excluded Patients", []],
])("finds the names in %j", (text, names) => {
  expect(namesInText([text])).toEqual(names);
});

test.each([
  ["mail ann.z@example.org today", "mail [withheld] today"],
  ["call 07700 900123 first", "call [withheld] first"],
  ["tel +49 170 1234567", "tel [withheld]"],
  ["NHS 943 476 5919", "NHS [withheld]"],
  ["record 12345678, left", "record [withheld], left"],
  ["DOB 3/4/2009", "DOB [withheld]"],
  ["2022-05-10, 2022-05-01", "2022-05-10, 2022-05-01"],
  ["13-04-2021 14-04-2021", "13-04-2021 14-04-2021"],
  ["170 165 160 150", "170 165 160 150"],
  ["66.6666666666667 percent", "66.6666666666667 percent"],
])("masks what identifies in %j", (text, masked) => {
  expect(maskText(text)).toBe(masked);
});

test.each([
  ["Who", ["Ann Zorvia", "Bo Quell", "Cy Brumax", "Di Tyndil"]],
  ["Pt", ["AZ", "BQ", "C.B.", "DT"]],
  ["Mother's phone", ["07700 900123", "07700 900124", "07700 900125", "07700 900126"]],
  ["Reg", ["943 476 5919", "943 476 5920", "943 476 5921", "943 476 5922"]],
  ["Film", ["IMG_20391.jpg", "IMG_20392.jpg", "IMG_20393.jpg", "IMG_20394.jpg"]],
  ["Where", ["12 High Street", "3 Mill Lane", "4 Mill Lane", "7 Long Road"]],
  ["Code 2", ["AB1 2CD", "AB1 3CD", "B12 4EF", "CD3 4GH"]],
  ["Anaesthetist", ["Zorvia", "Quell", "Zorvia", "Tyndil"]],
  ["Seen by", ["Dr Zorvia", "Dr Quell", "Dr Zorvia", "Dr Tyndil"]],
  ["Day", ["2006-02-03", "2009-05-01", "2010-07-02", "2011-01-09"]],
])("a column %s is known by its values to identify", async (heading, values) => {
  const rows = values.map((value, i) => `H${i + 1},"${value}",II,2021-0${i + 1}-04`);
  const table = await ofText(`ID,${heading},Grade,Injury date\n${rows.join("\n")}\n`);
  expect(table.identifiers).toEqual([heading]);
  for (const value of values) expect(shown(table)).not.toContain(value.toLowerCase());
});

test.each(["AO type", "Mechanism", "Implant"])("a column %s of short words identifies nobody", async (heading) => {
  const table = await ofText(`ID,${heading},Grade\nH1,RTA,II\nH2,Fall,III\nH3,Fall,II\nH4,RTA,IV\n`);
  expect(table.identifiers).toEqual([]);
});

test("names in another table, a note and a comment are withheld everywhere", async () => {
  const table = await ofText(
    "ID,Grade,Success,Note\nH1,II,Y,Dr Zorvia was called\nH2,III,N,Tyndil's mother rang\nH3,II,Y,\n\nName,Reason\nBo Quell,refused\nCy Brumax,moved\n* Zorvia saw Quell twice\n",
  );
  expect(table.cases).toHaveLength(3);
  expect(shown(table)).not.toMatch(/zorvia|tyndil|quell|brumax/);
});

test("a name in the name of the file is withheld, in messages too", async () => {
  const raw = await rawText("ID,Grade\nH1,x\nH2,III\n");
  const named: RawSheet = { ...raw, file: "Dr Zorvia series.csv" };
  expect(readCases(named).file).toBe("Dr [withheld] series.csv");
  expect(readCases(named).questions.map(({ id }) => id)).toContain("file name");
  expect(() => readCases(named, { answers: { "Grade | grade | x": "perhaps" } })).toThrow(
    /^Dr \[withheld\] series.csv: /,
  );
  expect(() => readCases(named, { roles: { Size: "grade" } })).toThrow(/^Dr \[withheld\] series.csv: /);
});

const parts = ["zorvia", "quell", "brumax", "tyndil", "ossvek", "kralow", "mirfen", "dretch"] as const;
const capital = (word: string): string => word[0]!.toUpperCase() + word.slice(1);

test("whoever is named, and wherever, is shown nowhere", () => {
  const places = fc.shuffledSubarray([...parts], { minLength: 8, maxLength: 8 });
  fc.assert(
    fc.property(
      places,
      fc.integer({ min: 1e8, max: 9e8 }),
      fc.constantFrom("text", "workbook"),
      (people, number, kind) => {
        const [title, patient, other, operator, noted, excluded, typist, mother] = people.map(capital) as string[];
        const rows = [
          [`Dr ${title}'s patients`],
          ["ID", "Name", "Surgeon", "Grade", "Success", "Reason for failure", "Notes"],
          ["H1", `${patient} A`, `Mr ${operator}`, "II", "Y", "", `Dr ${noted} agreed, call 0${number}`],
          ["H2", `${other} B`, operator!.toUpperCase(), "3-4", "?", `${mother}'s mum refused`, `see ${patient}`],
          ["H3", `${patient} C`, "B", "III", "N", `seen by ${title}`, ""],
          [],
          ["Name", "Reason"],
          [`${excluded} D`, "moved"],
          [`${excluded} E`, "refused"],
          [`typed by ${typist}, ${typist!.toLowerCase()}@example.org`],
        ];
        const sheet: RawSheet = {
          file: `cases of ${title}.csv`,
          kind: kind as RawSheet["kind"],
          rows: rows.map((cells, i) => ({
            number: i + 1,
            cells: cells.map((text) => (text === "III" ? { text, comment: `ask ${operator}` } : { text })),
          })),
        };
        const table = readCases(sheet);
        expect(table.cases).toHaveLength(3);
        const all = shown(table);
        for (const person of people) expect(all).not.toContain(person);
        expect(all).not.toContain(String(number));
        for (const { id } of table.questions) {
          let message = "";
          try {
            readCases(sheet, { answers: { [id]: "no such choice" } });
          } catch (error) {
            message = (error as Error).message.toLowerCase();
          }
          for (const person of people) expect(message).not.toContain(person);
        }
      },
    ),
    { numRuns: 60, seed: 11 },
  );
});
