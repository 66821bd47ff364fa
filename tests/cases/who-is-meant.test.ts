// Columns that name or number people under headings that do not tell, and columns that only look so. All names invented.
import { writeXlsx } from "hucre";
import { expect, test } from "vitest";
import { cellMap } from "../../src/cases/cell-map.js";
import { inspection, inspectionText } from "../../src/cases/inspection.js";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { shareSafe } from "../../src/cases/share-safe.js";
import type { CaseTable } from "../../src/cases/types.js";
import { gridOf, ofRows, ofText, question, rawText } from "./sheet-of.js";

const surnames =
  "Zorvia Quellbach Brumaxen Tyndilow Ossvekar Kralowin Mirfenby Dretchley Vandleroo Ipplewhit Zumdenbar Kvasnick".split(
    " ",
  );
const rows = surnames.length;
const twelve = (make: (i: number) => string): string[] => Array.from({ length: rows }, (_, i) => make(i));
const letter = (i: number): string => String.fromCharCode(65 + ((i * 7) % 26));
/** Days of birth, spread over seven years. */
const born = (i: number, order: string): string => {
  const [d, m, y] = [String((i * 11) % 28 || 28), String(((i * 5) % 12) + 1), String(2003 + ((i * 3) % 7))];
  return order
    .replace("dd", d.padStart(2, "0"))
    .replace("mm", m.padStart(2, "0"))
    .replace("yyyy", y)
    .replace("yy", y.slice(2));
};

function sheetWith(heading: string, values: readonly string[], alone: boolean): string {
  const lines = values.map((value, i) => {
    const rest = `${"LR"[i % 2]},${["II", "III"][i % 2]},closed,${i % 3 ? "Y" : "N"},2018-0${1 + (i % 9)}-1${i % 9}`;
    return alone ? `"${value}",${rest}` : `${i + 1},"${value}",${rest}`;
  });
  const first = heading === "" ? "" : `"${heading}"`;
  return `${alone ? first : `No,${first}`},Side,Grade,Technique,Success,Injured on\n${lines.join("\n")}\n`;
}

function shown(table: CaseTable): string {
  const parts = [table, inspection(table), cellMap(table), shareSafe(table)].map((part) => JSON.stringify(part));
  return [...parts, inspectionText(table)].join("\n").toLowerCase();
}

const naming: readonly (readonly [string, string, string[]])[] = [
  ["Ref", "initials and birth date", twelve((i) => `${letter(i)}${letter(i + 1)}${born(i, "ddmmyy")}`)],
  ["Study code", "birth date and initials", twelve((i) => `${born(i, "yyyymmdd")}-${letter(i)}${letter(i + 3)}`)],
  ["ID", "initials and a date with signs", twelve((i) => `${letter(i)}${letter(i + 5)} ${born(i, "dd.mm.yy")}`)],
  ["No", "surnames", surnames],
  ["Case", "surnames with letter and number", twelve((i) => `${surnames[i]} ${letter(i)}${(i % 3) + 1}`)],
  ["Entry", "surnames in capitals", twelve((i) => surnames[i]!.toUpperCase())],
  ["Key", "surnames in small letters", twelve((i) => surnames[i]!.toLowerCase())],
  ["Who", "surname, forename", twelve((i) => `${surnames[i]}, ${surnames[(i + 5) % rows]}`)],
  ["", "surnames without a heading", surnames],
  ["Accompanied", "names of mothers", twelve((i) => `Frau ${surnames[i]}`)],
  ["Pt", "initials", twelve((i) => letter(i) + letter(i * 3 + 1))],
  ["Ref", "initials with points", twelve((i) => `${letter(i)}.${letter(i * 3 + 1)}.`)],
  ["K", "three initials", twelve((i) => letter(i) + letter(i * 3 + 1) + letter(i * 5 + 2))],
  ["ID", "initials and a running number", twelve((i) => `${letter(i)}${letter(i * 3 + 1)}${i + 1}`)],
  ["ID", "hospital numbers", twelve((i) => `K${6_120_334 + ((i * 7919) % 104_729) * 7}`)],
  ["Ref", "six digits", twelve((i) => String(204_519 + ((i * 7919) % 104_729)))],
  ["XK", "nine digits", twelve((i) => String(204_519_113 + ((i * 7919) % 104_729) * 11))],
  ["Fall-Nr.", "eight digits that start like a year", twelve((i) => String(20_190_034 + i * 7771))],
  ["ID", "birth dates as number", twelve((i) => born(i, "yyyymmdd"))],
  [
    "NHI",
    "letters that differ with digits",
    twelve((i) => `${letter(i)}${letter(i + 2)}${letter(i + 4)}${1000 + i * 337}`),
  ],
  ["Rang", "telephone numbers", twelve((i) => `07700 9${String(10_000 + i * 733)}`)],
  ["Fam. kontakt", "telephone numbers of a sheet", twelve((i) => String(7_700_900_123 + i * 73_301))],
];

test.each(naming)("%s: %s are withheld, alone and beside a number", async (heading, _, values) => {
  for (const alone of [true, false]) {
    const text = sheetWith(heading, values, alone);
    for (const table of [await ofText(text), await ofRows(gridOf(text.replaceAll('"', "").replaceAll(", ", " ")))]) {
      expect(table.cases).toHaveLength(rows);
      expect(new Set(table.cases.map(({ child }) => child)).size).toBe(rows);
      expect(table.identifiers).toHaveLength(1);
      const all = shown(table);
      for (const value of values) expect(all).not.toContain(`"${value.toLowerCase()}"`);
      for (const value of values.filter(({ length }) => length > 4)) expect(all).not.toContain(value.toLowerCase());
    }
  }
});

test.each(["dd/mm/yyyy", "yyyy-mm-dd", "dd.mm.yy"])(
  "dates written %s years before the others are withheld",
  async (order) => {
    for (const heading of ["D/B", "Geb.", "Né le", "", "Datum 1", "rozená"]) {
      const values = twelve((i) => born(i, order));
      const table = await ofText(sheetWith(heading, values, false));
      expect(table.identifiers).toHaveLength(1);
      for (const value of values) expect(shown(table)).not.toContain(value);
      for (const i of values.keys()) expect(shown(table)).not.toContain(born(i, "yyyy-mm-dd"));
    }
  },
);

const harmless: readonly (readonly [string, string[], boolean])[] = [
  ["Mechanism", twelve((i) => ["Fall", "Football", "Trampoline", "Road traffic"][i % 4]!), false],
  ["Activity", twelve((i) => ["Football", "Rugby", "Riding", "Gymnastics"][i % 4]!), false],
  ["Setting", twelve((i) => ["Emergency", "Theatre", "Ward"][i % 3]!), false],
  ["Remark on grade", twelve((i) => ["sure", "doubtful"][i % 2]!), false],
  ["Complications", twelve((i) => ["Stiffness", "Pin infection", "none"][i % 3]!), false],
  ["Implant", twelve((i) => ["K-wire", "Elastic nail", "Plate"][i % 3]!), false],
  ["Anaesthesia", twelve((i) => ["GA", "LA", "General", "Regional block"][i % 4]!), false],
  ["ID", twelve((i) => String(i + 1)), true],
  ["ID", twelve((i) => `H${String(i + 1).padStart(3, "0")}`), true],
  ["Study no", twelve((i) => String(100_001 + i * 2)), true],
  ["Study no", twelve((i) => `P${100_101 + i}`), true],
  ["ID", twelve((i) => `2019-${String(i + 1).padStart(3, "0")}`), true],
  ["ID", twelve((i) => String(2_021_001 + i)), true],
  ["ID", twelve((i) => `S${1 + (i % 2)}-${String(i + 1).padStart(4, "0")}`), true],
  ["ID", twelve((i) => String(i + 1).padStart(8, "0")), true],
  ["ID", twelve((i) => `HUM-${i + 1}`), true],
  ["Date of surgery", twelve((i) => `2018-0${1 + (i % 9)}-15`), false],
];

test.each(harmless)("%s: %j is shown and nothing is asked about it", async (heading, values, alone) => {
  const table = await ofText(sheetWith(heading, values, alone));
  expect(table.identifiers).toEqual([]);
  expect(table.questions.filter(({ id }) => id.startsWith("identifies"))).toEqual([]);
});

test("a column that may name people is withheld until an answer frees it, and the question tells nothing of it", async () => {
  const text = sheetWith(
    "Firm",
    twelve((i) => surnames[i % 3]!),
    false,
  );
  const table = await ofText(text);
  const asked = table.questions.find(({ id }) => id === "identifies | Firm")!;
  expect(asked).toEqual({
    ...{ id: "identifies | Firm", rows: [], column: "Firm", text: "" },
    asks: '"Firm" may name or number people and is withheld: does it?',
    choices: ["yes: keep it withheld", "no: it may be shown"],
  });
  expect(table.identifiers).toEqual(["Firm"]);
  expect(shown(table)).not.toMatch(/zorvia|quellbach|brumaxen/);
  const freed = await ofText(text, { answers: { "identifies | Firm": "no: it may be shown" } });
  expect(freed.identifiers).toEqual([]);
  expect(freed.columns.find(({ name }) => name === "Firm")!.examples).toContain("Zorvia");
  const kept = await ofText(text, { answers: { "identifies | Firm": "yes: keep it withheld" } });
  expect(kept.identifiers).toEqual(["Firm"]);
  expect(kept.questions.map(({ id }) => id)).not.toContain("identifies | Firm");
  const raw = await rawText(text);
  expect(() => readCases(raw, { answers: { "identifies | Firm": "perhaps" } })).toThrow(
    'the answer to "identifies | Firm" must be one of "yes: keep it withheld", "no: it may be shown"',
  );
});

test("study numbers of five digits out of sequence are withheld and asked about", async () => {
  const table = await ofText(
    sheetWith(
      "ID",
      twelve((i) => String(10_000 + ((i * 7919) % 80_021))),
      true,
    ),
  );
  expect(table.identifiers).toEqual(["ID"]);
  expect(question(table, "").id).toBe("identifies | ID");
});

test("initials and birth dates are withheld from notes too, in other spellings of the date", async () => {
  const table = await ofText(
    "No,Pt,DOB,Grade,Success,Notes\n1,LB,24.09.2007,II,Y,LB was late\n2,CQ,14.03.2004,III,N,born 14/3/04 at term\n3,DW,02.11.2005,II,Y,seen with CQ on 3 Nov 2019\n",
  );
  const notes = JSON.stringify(table.cases.map(({ values }) => values.at(-1)));
  expect(notes).toContain("[withheld] was late");
  expect(notes).toContain("born [withheld] at term");
  expect(notes).toContain("seen with [withheld] on 3 Nov 2019");
});

test("children without a number to show are told apart by record number, by both names, or by initials and birth date", async () => {
  const head = "Side,Grade,Success";
  const children = async (text: string): Promise<number> => {
    const table = await ofText(text);
    return new Set(table.cases.map(({ child }) => child)).size;
  };
  const brothers = `GP,Surname,Forename,${head}\nDr Quell,Zorvia,Ann,L,II,Y\nDr Quell,Zorvia,Bo,L,III,N\nDr Quell,Tyndil,Bo,R,II,Y\nDr Quell,Tyndil,Bo,L,II,Y\n`;
  expect(await children(brothers)).toBe(3);
  const numbered = `Mother,MRN,Name,${head}\nIda,6120334,Ann Zorvia,L,II,Y\nIda,6120334,A. Zorvia,R,III,N\nIda,7340012,Bo Zorvia,R,II,Y\n`;
  expect(await children(numbered)).toBe(2);
  const initials = `Initials,DOB,${head}\nLB,2007-09-24,L,II,Y\nLB,2009-01-02,L,III,N\nCQ,2008-03-04,R,II,Y\nCQ,2008-03-04,L,II,Y\n`;
  expect(await children(initials)).toBe(3);
});

test.each([["Zorvia cases"], ["Dr Zorvia"], ["Zorvia"], ["liste Zorvia"]])(
  "a sheet named %j beside the cases is counted, not named",
  async (name) => {
    const heads = ["ID", "Side", "Grade", "Technique", "Success"];
    const body = twelve(String).map((id) => [`H${id}`, "L", "II", "closed", "Y"]);
    const bytes = await writeXlsx({
      sheets: [
        { name: "Cases", rows: [heads, ...body] },
        { name, rows: [heads, ["H90", "R", "III", "open", "N"], ["H91", "R", "III", "open", "N"]] },
        { name: `${name} 2`, rows: [["to do"], ["ask for films"]] },
      ],
    });
    const table = readCases(await readSheet(bytes, "invented.xlsx"));
    expect(shown(table)).not.toContain("zorvia");
  },
);
