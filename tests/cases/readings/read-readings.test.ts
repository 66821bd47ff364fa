import { describe, expect, it } from "vitest";
import { readReadings } from "../../../src/cases/readings/read-readings.js";
import type { Readings, ReadingsOptions } from "../../../src/cases/readings/types.js";
import { rawText } from "../sheet-of.js";

const read = async (text: string, options?: ReadingsOptions): Promise<Readings> =>
  readReadings(await rawText(text), options);

describe("grades", () => {
  it("are Roman, Arabic or both, on the scale from the lowest to the highest found", async () => {
    const readings = await read("film,A,B\n7,I,1\n8,grade iv,IV\n9,,ii\n");
    expect(readings).toMatchObject({
      kind: "grades",
      grades: ["I", "II", "III", "IV"],
      numbers: null,
      readings: [
        [0, 0],
        [3, 3],
        [null, 1],
      ],
      radiographs: [
        { id: "7", row: 2 },
        { id: "8", row: 3 },
        { id: "9", row: 4 },
      ],
    });
    expect(readings.notes).toContain("Grades are ordered I, II, III, IV, from the lowest to the highest found.");
  });

  it("are whole numbers up to 10, which stay numbers too", async () => {
    expect(await read("film,A,B\n1,2,4\n2,4,2\n")).toMatchObject({
      kind: "grades",
      grades: ["2", "3", "4"],
      numbers: [2, 3, 4],
      readings: [
        [0, 2],
        [2, 0],
      ],
    });
  });

  it("are words in order of first appearance, said so, or in the order given", async () => {
    const text = "film,A,B\n1,mild,Severe\n2,moderate,mild\n3,severe,not done\n";
    const found = await read(text);
    expect(found).toMatchObject({
      grades: ["mild", "Severe", "moderate"],
      readings: [
        [0, 1],
        [2, 0],
        [1, null],
      ],
    });
    expect(found.notes).toContain(
      "Grades are words, ordered as they first appear: mild, Severe, moderate. If that is not their order, give it.",
    );
    expect(await read(text, { grades: ["mild", "moderate", "severe"] })).toMatchObject({
      readings: [
        [0, 2],
        [1, 0],
        [2, null],
      ],
    });
  });
});

describe("measurements", () => {
  it("are numbers with units, decimal commas and gaps", async () => {
    expect(await read("film;A;B\n1;33,5;41°\n2;;20\n3;18,0;-\n")).toMatchObject({
      kind: "measurements",
      readings: [
        [33.5, 41],
        [null, 20],
        [18, null],
      ],
    });
  });

  it("may be small whole numbers when said so", async () => {
    expect(await read("film,A,B\n1,2,4\n2,4,2\n", { as: "measurements" })).toMatchObject({ kind: "measurements" });
  });
});

describe("raters and occasions", () => {
  it("takes numbers after two or more names for occasions, but not rater 1 and rater 2", async () => {
    const twice = await read("film,A1,A2,B1\n1,I,I,II\n");
    expect(twice.columns).toEqual([
      { name: "A1", rater: "A", occasion: 1 },
      { name: "A2", rater: "A", occasion: 2 },
      { name: "B1", rater: "B", occasion: 1 },
    ]);
    expect(twice.notes).toContain("Numbers at the end of a heading are taken for occasions: A read more than once.");
    for (const heads of ["rater1,rater2,rater3", "A1,A2,A3", "R1,R2,O1"])
      expect((await read(`film,${heads}\n1,I,I,II\n`)).columns.every(({ occasion }) => occasion === 1)).toBe(true);
  });

  it("reads one row a reading, uneven, with occasions", async () => {
    const readings = await read("radiograph,rater,occasion,grade\n1,A,1,I\n1,A,2,II\n1,B,1,I\n2,B,1,III\n3,A,1,\n");
    expect(readings).toMatchObject({
      columns: [{ name: "A 1" }, { name: "A 2", rater: "A", occasion: 2 }, { name: "B 1" }],
      readings: [
        [0, 1, 0],
        [null, null, 2],
        [null, null, null],
      ],
      radiographs: [
        { id: "1", row: 2 },
        { id: "2", row: 5 },
        { id: "3", row: 6 },
      ],
    });
  });

  it("leaves notes and dates aside, names unnamed radiographs by row, and asks about copies", async () => {
    const rows = Array.from({ length: 10 }, (_, i) => `${(i % 3) + 1},${(i % 3) + 1},blurred`);
    const readings = await read(`A,B,note\n${rows.join("\n")}\n`);
    expect(readings.columns.map(({ name }) => name)).toEqual(["A", "B"]);
    expect(readings.radiographs[0]).toEqual({ id: "row 2", row: 2 });
    expect(readings.notes).toContain("Not read: note.");
    expect(readings.notes).toContain("A and B are the same in all 10 radiographs that both hold: was one copied?");
  });

  it("says that a rater holds no reading", async () => {
    expect((await read("film,A,B,C\n1,I,II,\n2,II,II,\n")).notes).toContain("C holds no reading.");
  });
});

describe("what is wrong", () => {
  it.each([
    [
      "film,A,B\n1,I,II\n2,x4,I\n3,II,I?\n",
      'invented.csv: row 3, column "A": a grade must be one of I to X or 1 to 10 like the others, or empty, got "x4"\ninvented.csv: row 4, column "B": a grade must be one of I to X or 1 to 10 like the others, or empty, got "I?"',
    ],
    [
      "film,A,B\n1,30.5,31\n2,about 40,39\n",
      'invented.csv: row 3, column "A": a reading must be a number like the others, or empty, got "about 40"',
    ],
    [
      "film,A,B\n1,I,I\n1,II,II\n",
      'invented.csv: row 3, column "film": a radiograph must have one row, it is also in row 2, got "1"',
    ],
    ["film,A,A\n1,I,I\n", 'invented.csv: row 1, column "A": every heading must be different'],
    ["film,A,B\n1,I,I,II\n", 'invented.csv: row 2: has more cells than the 3 headings, got "II"'],
    ["film,A,\n1,I,I\n", 'invented.csv: row 2: has more cells than the 2 headings, got "I"'],
    ["film,A\n1,I\n", "invented.csv: must have readings of at least two raters, one column each; found 1: film, A"],
    ["1,2,3\n2,3,4\n", "invented.csv: row 1: the first row must name the raters, but it holds numbers only"],
    ["film,A,B\n", "invented.csv: must hold a heading row and at least one radiograph"],
    ["film,A,B\n1,,\n", "invented.csv: must hold at least one reading, all cells are empty"],
    [
      "id,rater,grade\n1,A,I\n1,A,II\n1,B,I\n",
      'invented.csv: row 3, column "rater": must read radiograph 1 once, got "A"',
    ],
  ])("%j", async (text, message) => {
    await expect(read(text)).rejects.toThrow(message);
    await expect(read(text)).rejects.toHaveProperty("name", "SheetError");
  });

  it("a grade outside the scale that was given", async () => {
    await expect(read("film,A,B\n1,I,V\n", { grades: ["I", "II", "III", "IV"] })).rejects.toThrow(
      'invented.csv: row 2, column "B": a grade must be one of I, II, III, IV, or empty, got "V"',
    );
    await expect(read("film,A,B\n1,I,I\n", { grades: ["I", "I"] })).rejects.toThrow(
      new RangeError('readReadings: grades must name at least two different grades, got "I, I"'),
    );
  });

  it("free text", async () => {
    const rows = Array.from({ length: 14 }, (_, i) => `${i},word${"abcdefghijklmn"[i]!},none`);
    await expect(read(`film,A,B\n${rows.join("\n")}\n`)).rejects.toThrow(
      "readings must be numbers, grades, or at most 12 different words",
    );
  });
});
