import fc from "fast-check";
import { expect, it } from "vitest";
import { mergeSmallCells } from "../../src/findings/merge-small-cells.js";

it("puts techniques of a grade together before grades", () => {
  const rows = [
    { grade: "I", technique: "closed", successes: 9, cases: 9 },
    { grade: "II", technique: "closed", successes: 14, cases: 15 },
    { grade: "II", technique: "open", successes: 1, cases: 1 },
    { grade: "III", technique: "open", successes: 1, cases: 2 },
  ];
  expect(mergeSmallCells(rows, 5)).toEqual([
    { grade: "I", technique: "closed", successes: 9, cases: 9 },
    { grade: "II or III", technique: "closed or open", successes: 16, cases: 18 },
  ]);
});

it("leaves no small cell and changes no total, whatever the counts", () => {
  const cell = fc.record({
    grade: fc.constantFrom("I", "II", "III", "IV"),
    technique: fc.constantFrom("closed", "open", "assisted"),
    cases: fc.integer({ min: 1, max: 12 }),
  });
  fc.assert(
    fc.property(
      fc.uniqueArray(cell, { selector: ({ grade, technique }) => grade + technique, minLength: 1 }),
      fc.integer({ min: 1, max: 8 }),
      (cells, least) => {
        const rows = cells
          .toSorted((a, b) => (a.grade < b.grade ? -1 : 1))
          .map((one) => ({ ...one, successes: Math.floor(one.cases / 2) }));
        const sum = (all: typeof rows, of: "cases" | "successes"): number =>
          all.reduce((total, row) => total + row[of], 0);
        fc.pre(sum(rows, "cases") >= least);
        const merged = mergeSmallCells(rows, least) as typeof rows;
        expect(Math.min(...merged.map(({ cases }) => cases))).toBeGreaterThanOrEqual(least);
        expect([sum(merged, "cases"), sum(merged, "successes")]).toEqual([sum(rows, "cases"), sum(rows, "successes")]);
      },
    ),
  );
});

it("refuses to share fewer cases than the limit", () =>
  expect(() => mergeSmallCells([{ grade: "I", technique: "open", successes: 1, cases: 3 }], 5)).toThrow(
    new RangeError("mergeSmallCells: there must be at least 5 cases, got 3"),
  ));
