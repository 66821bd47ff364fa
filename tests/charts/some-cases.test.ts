// A picture holds about a thousand single marks; of more cases it draws some, says so, and stays true.
import { expect, it } from "vitest";
import { caseRun } from "../../src/charts/case-run.js";
import { practicePicture } from "../../src/charts/pictures/practice-picture.js";
import { oneIn, someOf, someWords } from "../../src/charts/some-cases.js";
import type { Findings } from "../../src/findings/types.js";
import { checkDrawing } from "./check-drawing.js";

it("draws every case while there are few, and then one in so many, the first among them", () => {
  expect([0, 1, 1000, 1001, 100_000].map(oneIn)).toEqual([1, 1, 1, 2, 100]);
  expect(someOf([1, 2, 3, 4, 5], 2)).toEqual([1, 3, 5]);
  expect(someOf([1], 100)).toEqual([1]);
  expect(someWords(1)).toBe("");
  expect(someWords(100)).toBe(" There are too many to draw them all: one in 100 is.");
});

it("keeps the extremes of a long run of cases, and both its ends", () => {
  const excess = (i: number): number => (i === 54_321 ? 700 : 50 * Math.sin(i / 1000));
  const steps = Array.from({ length: 100_000 }, (_, i) => ({
    id: `H${i}`,
    order: i + 1,
    grade: "II",
    failed: i % 3 === 0,
    excess: excess(i),
  }));
  const picture = practicePicture({ practice: { steps }, unit: "limb", limb: "limb" } as unknown as Findings)!;
  expect(picture.caption).toMatch(/^There are too many cases for a mark each: of each 100 /);
  const { rows, spec } = picture.drawing(640);
  checkDrawing({ rows, spec });
  expect(rows["marks"]).toEqual([]);
  const line = rows["line"] as { x: number; y: number }[];
  expect(line).toHaveLength(1001);
  const top = line.reduce((highest, point) => (point.y < highest.y ? point : highest));
  expect(top.x).toBeCloseTo(44 + (54_322 / 100_000) * (640 - 44 - 14), 6);
  expect(rows["ends"]).toEqual([
    expect.objectContaining({ text: "1" }),
    expect.objectContaining({ text: "100000", x: expect.closeTo(640 - 21, -1) as number }),
  ]);
});

it("places a step where its case stands in the order", () => {
  const { rows } = caseRun([{ excess: 0.5, place: 9 }], { x: "case", y: "excess" }, { cases: 10, width: 640 });
  expect((rows["line"] as { x: number }[])[1]!.x).toBe(640 - 14);
});
