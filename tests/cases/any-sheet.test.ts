// Properties: whatever stands in the cells, nothing throws, nothing is lost, nothing that identifies is shown.
import fc from "fast-check";
import { expect, test } from "vitest";
import { inspection, inspectionText } from "../../src/cases/inspection.js";
import { readCases } from "../../src/cases/read-cases.js";
import { SheetError } from "../../src/cases/sheet-error.js";
import type { CaseTable, RawSheet } from "../../src/cases/types.js";

const words = [
  "ID",
  "Side",
  "Grade",
  "Success",
  "Displ",
  "Age",
  "Technique",
  "Complications",
  "Follow-up",
  "Date",
  "Note",
  "L",
  "III",
  "3-4",
  "Y",
  "?",
  "lost",
  "999",
  "12+6",
  "170°",
  "03/04/2021",
  "1-Mar",
  "none",
  "Total",
  "",
  "",
  "H001",
  "H002",
];
const hostile = [
  "__proto__",
  "constructor",
  "toString",
  "hasOwnProperty",
  "=1+1",
  '=HYPERLINK("x")',
  "<script>alert(1)</script>",
  "<img src=x onerror=x>",
  "x".repeat(10_000),
  "\u0000",
  "\u202Eabc",
  "💉",
  "+cmd|' /C calc'!A0",
  "@SUM(A1)",
  "\uFEFFID",
  "a\nb",
];
const cell = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...words) },
  { weight: 1, arbitrary: fc.constantFrom(...hostile) },
  { weight: 2, arbitrary: fc.string({ unit: "binary", maxLength: 12 }) },
);
const grid = fc.array(fc.array(cell, { maxLength: 8 }), { minLength: 1, maxLength: 14 });

function sheetOf(rows: readonly (readonly string[])[], kind: RawSheet["kind"] = "text"): RawSheet {
  return {
    file: "any.csv",
    kind,
    separator: ",",
    encoding: "utf-8",
    rows: rows.map((cells, i) => ({ number: i + 1, cells: cells.map((text) => ({ text })) })),
  };
}

function read(rows: readonly (readonly string[])[]): CaseTable | undefined {
  try {
    return readCases(sheetOf(rows));
  } catch (error) {
    if (error instanceof SheetError && /holds no cases/.test(error.message)) return undefined;
    throw error;
  }
}

test("any grid of texts is read without throwing, its rows and cells add up", () => {
  fc.assert(
    fc.property(grid, (rows) => {
      const table = read(rows);
      if (!table) return;
      const cells = rows.reduce((sum, row) => sum + row.length, 0);
      const { understood, asked, setAside } = table.cells;
      expect(understood + asked + setAside).toBe(cells);
      expect(Math.min(understood, asked, setAside)).toBeGreaterThanOrEqual(0);
      const fates = [
        ...table.header.rows,
        ...table.cases.map(({ row }) => row),
        ...table.setAside.map(({ row }) => row),
      ];
      expect(fates.toSorted((a, b) => a - b)).toEqual(rows.map((_, i) => i + 1));
      for (const { values } of table.cases) expect(values).toHaveLength(table.columns.length);
      for (const { rows: asks } of table.questions) for (const row of asks) expect(row).toBeGreaterThanOrEqual(1);
      expect(new Set(table.columns.map(({ name }) => name)).size).toBe(table.columns.length);
      expect(new Set(table.cases.map(({ id }) => id)).size).toBe(table.cases.length);
      expect(JSON.parse(JSON.stringify(inspection(table)))).toBeTypeOf("object");
      expect(inspectionText(table)).toBeTypeOf("string");
    }),
    { numRuns: 600, seed: 20260110 },
  );
});

test("each question has an id of its own, at least two choices, and every choice can be given as its answer", () => {
  fc.assert(
    fc.property(grid, (rows) => {
      const table = read(rows);
      if (!table) return;
      expect(new Set(table.questions.map(({ id }) => id)).size).toBe(table.questions.length);
      for (const { id, choices } of table.questions.slice(0, 6)) {
        expect(choices.length).toBeGreaterThan(1);
        for (const choice of choices) {
          const answered = readCases(sheetOf(rows), { answers: { [id]: choice } });
          expect(answered.questions.map((question) => question.id)).not.toContain(id);
        }
      }
    }),
    { numRuns: 60, seed: 7 },
  );
});

test.each(hostile.filter((text) => text !== "\u0000" && text !== "\uFEFFID"))(
  "a column headed %j survives as text",
  (name) => {
    const table = read([
      ["ID", name, name, "Grade"],
      ["H1", "a", "b", "II"],
      ["H2", "c", "d", "III"],
    ])!;
    const clean = name.replace(/\s+/g, " ").replace("\u202E", "");
    expect(table.columns.map((column) => column.name)).toEqual(["ID", clean, `${clean} (2)`, "Grade"]);
    expect(table.cases.map(({ values }) => values[1])).toEqual([
      { kind: "text", text: "a" },
      { kind: "text", text: "c" },
    ]);
  },
);

const secret = fc
  .array(fc.constantFrom("zorvia", "quell", "brumax", "tyndil", "ossvek", "Kralow", "Mirfen", "Dretch"), {
    minLength: 1,
    maxLength: 2,
  })
  .map((parts) => parts.join(" "));

test("no part of a quarantined text occurs in anything that can be shown", () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ name: secret, phone: fc.integer({ min: 1e9, max: 9e9 }), note: secret }), {
        minLength: 2,
        maxLength: 8,
      }),
      (people) => {
        const rows = [
          ["Name", "Phone", "Grade", "Success", "Complications", "Notes"],
          ...people.map(({ name, phone }, i) => [
            name,
            `0${phone}`,
            ["II", "3-4"][i % 2]!,
            "Y",
            `pin out; ${name}`,
            `${people[(i + 1) % people.length]!.name}'s mum, call 0${phone}`,
          ]),
          [`* seen by ${people[0]!.name}`],
        ];
        const table = read(rows)!;
        expect(table.identifiers).toEqual(["Name", "Phone"]);
        const shown = `${JSON.stringify(table)}${inspectionText(table)}`.toLowerCase();
        for (const { name, phone } of people) {
          for (const word of name.toLowerCase().split(" ")) expect(shown).not.toContain(word);
          expect(shown).not.toContain(String(phone));
        }
      },
    ),
    { numRuns: 100, seed: 3 },
  );
});

test("reads roles from other languages, short heads and heads that end in type", () => {
  const table = read([
    ["Case", "First op", "Final op", "Fracture type", "Succès"],
    ["1", "closed", "closed", "IIa", "oui"],
    ["2", "closed", "open", "III", "non"],
  ])!;
  const roles = table.columns.map(({ role }) => role);
  expect(roles).toEqual(["id", "firstTechnique", "finalTechnique", "grade", "success"]);
});

test("takes a column named for its grade before one named for its type", () => {
  const table = read([
    ["ID", "Fracture type", "Grade", "Success"],
    ["1", "2", "II", "Y"],
    ["2", "3", "III", "N"],
  ])!;
  expect(table.columns.map(({ role }) => role)).toEqual(["id", "other", "grade", "success"]);
});
