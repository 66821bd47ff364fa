// The pictures made of rows of cases, beside the house's own (case-marks.test.ts): what each draws, and that it only draws.
import { describe, expect, it } from "vitest";
import type { CaseMark, MarkTechnique } from "../../src/charts/case-mark.js";
import { comparison } from "../../src/charts/comparison.js";
import { denominatorLadder } from "../../src/charts/denominator-ladder.js";
import { eventLimits } from "../../src/charts/event-limits.js";
import { techniqueLadder, type LadderMark } from "../../src/charts/technique-ladder.js";
import { techniquesByGrade } from "../../src/charts/techniques-by-grade.js";
import { checkDrawing } from "./check-drawing.js";

const cases = (count: number, technique: MarkTechnique, more: Partial<CaseMark> = {}): (CaseMark & LadderMark)[] =>
  Array.from({ length: count }, (_, i) => ({ outcome: "success", technique, id: `${technique}${i}`, ...more }));
const widths = [640, 304];
const bands = { interval: { low: 0, high: 0.07 }, inner: { low: 0, high: 0.01 } };

describe("techniques by grade", () => {
  const row = {
    label: "IV",
    marks: { closed: cases(3, "closed"), assisted: cases(1, "assisted"), open: cases(2, "open", { crossed: true }) },
    count: "3 closed, 1 assisted",
    note: "2 open",
  };
  const key = { closed: "closed", assisted: "assisted", open: "open" };
  it("draws the technique by shape and by colour, and crosses the cases that something happened to", () => {
    for (const width of widths) {
      const drawing = techniquesByGrade([row], key, { width });
      checkDrawing(drawing);
      const { marks, crosses } = drawing.rows as { marks: { shape: string; stroke: string }[]; crosses: object[] };
      for (const mark of marks) expect(mark.shape).toBe(mark.stroke);
      // Three shapes of the key come first.
      expect(marks.slice(3).map((mark) => mark.shape)).toEqual([
        "closed",
        "closed",
        "closed",
        "assisted",
        "open",
        "open",
      ]);
      expect(crosses).toHaveLength(2);
    }
  });
  it("keeps the techniques apart by a free place", () => {
    const { marks } = techniquesByGrade([row], {}).rows as { marks: { x: number; shape: string }[] };
    const gaps = marks.slice(1).map((mark, i) => mark.x - marks[i]!.x);
    expect(gaps).toEqual([12.5, 12.5, 25, 25, 12.5]);
  });
});

describe("comparison of two techniques", () => {
  const text = { closed: "closed", open: "open", axis: "difference" };
  const difference = { estimate: 0.24, interval: { low: -0.01, high: 0.53 }, inner: { low: 0.1, high: 0.3 } };
  it("breaks a title of its axis that is longer than the axis, and makes room for it", () => {
    const row = { label: "All", first: cases(1, "closed"), second: [], difference, count: "", note: "" };
    const axis = "difference of the shares that succeeded, closed less open, in percentage points";
    const [narrow, wide] = [304, 640].map((width) => comparison([row], { axis }, { width }).spec);
    expect(JSON.stringify(wide)).toContain(JSON.stringify({ title: [axis] }).slice(1, -1));
    expect(JSON.stringify(narrow)).toMatch(/"title":\["[^"]+","[^"]+"/);
    const below = ({ padding }: typeof wide & { padding?: unknown }): number => (padding as { bottom: number }).bottom;
    expect(below(narrow!)).toBeGreaterThan(below(wide!));
  });
  it("puts both groups over the band of their difference, and no band where nothing can be compared", () => {
    const rows = [
      {
        label: "All",
        first: cases(4, "closed"),
        second: cases(3, "open"),
        difference,
        count: "4 of 4, 3 of 3",
        note: "24",
      },
      { label: "I", first: cases(2, "closed"), second: [], difference: null, count: "2 of 2, none", note: "" },
    ];
    for (const width of widths) {
      const drawing = comparison(rows, text, { width });
      checkDrawing(drawing);
      const { marks, bands: drawn } = drawing.rows as { marks: { y: number; shape: string }[]; bands: { y: number }[] };
      expect(drawn).toHaveLength(1);
      const heights = ["closed", "open"].map(
        (shape) => marks.findLast((mark) => mark.shape === shape && mark.y < drawn[0]!.y)!.y,
      );
      expect(heights[0]!).toBeLessThan(heights[1]!);
    }
  });
});

describe("limits of rare events", () => {
  it("crosses each event and chooses the shortest axis that holds every interval", () => {
    const seen = { estimate: 0.06, interval: { low: 0.02, high: 0.17 }, inner: { low: 0.04, high: 0.1 } };
    for (const width of widths) {
      const rows = [
        { label: "Nerve", events: [], estimate: 0, ...bands, count: "0 of 51", note: "" },
        { label: "Pin site", events: ["a", "b", "c"], ...seen, count: "3 of 51", note: "" },
      ];
      const drawing = eventLimits(rows, { width });
      checkDrawing(drawing);
      expect(drawing.rows["crosses"]).toHaveLength(3);
      expect(JSON.stringify(drawing.spec)).toContain('"domain":[0,0.2]');
    }
  });
});

describe("ladder of denominators", () => {
  const steps = [
    { kind: "rung", label: "Screened", cases: 64, text: "64 limbs" },
    { kind: "leavers", label: "open wound", cases: 3, text: "3 limbs" },
    { kind: "rung", label: "Eligible", cases: 61, text: "61 limbs" },
    { kind: "leavers", label: "lost", cases: 20, text: "20 limbs" },
    { kind: "rung", label: "Analysed", cases: 41, text: "41 limbs" },
  ] as const;
  it("draws bars in proportion, leavers as rings at the end they leave, many of them as a frame", () => {
    for (const width of widths) {
      const drawing = denominatorLadder(steps, { width });
      checkDrawing(drawing);
      const { bars, marks } = drawing.rows as { bars: { x: number; x2: number }[]; marks: { x: number }[] };
      const lengths = bars.map((bar) => bar.x2 - bar.x);
      expect(lengths[0]! / lengths[1]!).toBeCloseTo(64 / 61, 10);
      expect(lengths[2]! / lengths[1]!).toBeCloseTo(20 / 61, 10);
      expect(marks).toHaveLength(3);
      for (const mark of marks) expect(mark.x).toBeLessThan(bars[0]!.x2);
    }
  });
});

describe("ladder of techniques", () => {
  it("stands each case in the column of its final technique, a converted one in the outline of its first", () => {
    const marks = [...cases(2, "closed"), ...cases(2, "open"), { ...cases(1, "open")[0]!, first: "closed" as const }];
    const row = { label: "IV", marks, counts: { closed: "2", assisted: "0", open: "3" } };
    for (const width of widths) {
      const drawing = techniqueLadder(
        [row],
        { closed: "closed", assisted: "assisted by a wire", open: "open" },
        { width },
      );
      checkDrawing(drawing);
      const drawn = drawing.rows as { marks: { x: number; shape: string }[]; outlines: { x: number; shape: string }[] };
      expect(drawn.marks.map((mark) => mark.shape)).toEqual(["closed", "closed", "open", "open", "open"]);
      expect(drawn.outlines.map((mark) => mark.shape)).toEqual(["closed"]);
      expect(drawn.outlines[0]!.x).toBe(drawn.marks.at(-1)!.x);
      expect(drawn.marks[1]!.x).toBeLessThan(drawn.marks[2]!.x);
    }
  });
});
