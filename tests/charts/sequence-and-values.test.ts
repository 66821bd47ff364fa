import { expect, it } from "vitest";
import { caseRun } from "../../src/charts/case-run.js";
import { valueStrip } from "../../src/charts/value-strip.js";
import { checkDrawing } from "./check-drawing.js";

const mark = (id: string, outcome: "success" | "failure" = "success") => ({ id, outcome });

it("draws consecutive cases as a line with every case on it", () => {
  const drawing = caseRun(
    [
      { mark: mark("a"), excess: -0.2 },
      { mark: mark("b", "failure"), excess: 0.6 },
    ],
    { x: "case", y: "excess" },
  );
  checkDrawing(drawing);
  const marks = drawing.rows["marks"] as { id: string; y: number; fill: string }[];
  expect(marks.map(({ id }) => id)).toEqual(["a", "b"]);
  expect(marks[1]!.y).toBeLessThan(marks[0]!.y);
  expect(marks[1]!.fill).toBe("none");
});

it("draws a run of no case", () => checkDrawing(caseRun([], { x: "case", y: "excess" })));

it.each([640, 320])("draws values where they lie and covers none at %i pixels", (width) => {
  const cases = [12, 12, 12, -3, 40].map((value, i) => ({ mark: mark(`c${i}`), value }));
  const summary = { median: 12, q1: 12, q3: 12, low: -3, high: 40 };
  const drawing = valueStrip(
    [
      { label: "I", count: "5", note: "", cases, summary },
      { label: "II", count: "0", note: "none", cases: [], summary: null },
    ],
    { title: "loss", reference: 0 },
    { width },
  );
  checkDrawing(drawing);
  const marks = drawing.rows["marks"] as { x: number; y: number }[];
  expect(new Set(marks.map(({ x, y }) => `${x} ${y}`)).size).toBe(5);
});
