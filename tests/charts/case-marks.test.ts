import { describe, expect, it } from "vitest";
import { caseMarks, type CaseMarksRow } from "../../src/charts/case-marks.js";
import { svgOf } from "../../src/charts/svg-of.js";
import { checkDrawing } from "./check-drawing.js";

const row = (label: string, successes: number, trials: number): CaseMarksRow => ({
  label,
  marks: Array.from({ length: trials }, (_, i) => ({
    outcome: i < successes ? "success" : "failure",
    id: `${label}${i}`,
  })),
  estimate: trials === 0 ? null : successes / trials,
  interval: { low: 0.3, high: 0.9 },
  inner: { low: 0.5, high: 0.7 },
  count: `${successes} of ${trials}`,
  note: "some text",
});
const text = { title: "How often did it work?", description: "Success by grade" };

describe("the picture of the house", () => {
  for (const width of [640, 288])
    it(`names only fields of its rows, warns of nothing and computes nothing, ${width} px wide`, () => {
      checkDrawing(caseMarks([row("I", 12, 12), row("II", 60, 64), row("none", 0, 0)], { width }));
    });

  it("draws every case: filled when it succeeded, an open ring when not", () => {
    const { marks } = caseMarks([row("I", 9, 9), row("IV", 2, 5)]).rows as { marks: { fill: string; id: string }[] };
    expect(marks.filter((mark) => mark.fill === "closed")).toHaveLength(11);
    expect(marks.filter((mark) => mark.fill === "none").map((mark) => mark.id)).toEqual(["IV2", "IV3", "IV4"]);
  });

  it("never draws two marks in one place, nor outside the picture, however narrow", () => {
    for (const width of [260, 304, 640, 1200]) {
      const { spec, rows } = caseMarks([row("I", 40, 60), row("A long name of a subgroup", 5, 59)], { width });
      const marks = rows["marks"] as { x: number; y: number }[];
      expect(new Set(marks.map((mark) => `${mark.x} ${mark.y}`)).size).toBe(119);
      for (const { x, y } of marks) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(width);
        expect(y).toBeLessThan((spec as { height: number }).height);
      }
    }
  });

  it("merges the marks of more than 60 cases into a bar in proportion", () => {
    const { marks, bars } = caseMarks([row("All", 48, 64)]).rows as {
      marks: object[];
      bars: { x: number; x2: number }[];
    };
    expect(marks).toEqual([]);
    const [filled, open] = bars.map((part) => part.x2 - part.x);
    expect(filled! / open!).toBeCloseTo(48 / 16, 10);
  });

  it("draws no band where there is nothing to estimate", () => {
    expect(caseMarks([row("none", 0, 0)]).rows["bands"]).toEqual([]);
  });

  it("keeps its specification when only the intervals change, so that a page changes the data alone", () => {
    const before = row("I", 9, 12);
    const after = { ...before, interval: { low: 0.2, high: 0.95 } };
    expect(caseMarks([after]).spec).toEqual(caseMarks([before]).spec);
  });
});

describe("its file", () => {
  it("has the same bytes each time, says its title and description, and uses the colours of paper", async () => {
    const { spec, rows } = caseMarks([row("I", 9, 12)]);
    const svg = await svgOf(spec, rows, text);
    expect(await svgOf(spec, rows, text)).toBe(svg);
    expect(svg).toContain("<title>How often did it work?</title><desc>Success by grade</desc>");
    expect(svg).toContain("#146c73");
    expect(svg).not.toContain("var(--");
    expect(svg).toContain(">9 of 12</text>");
  });

  it("shows every line of text it was given, none dropped for want of room", async () => {
    const { spec, rows } = caseMarks([row("I", 1, 2), row("Overlong name of a subgroup with several words", 3, 4)]);
    const svg = await svgOf(spec, rows, text);
    for (const word of ["I", "1 of 2", "3 of 4", "0%", "25%", "50%", "75%", "100%"])
      expect(svg).toContain(`>${word}</text>`);
    expect(svg.match(/>[^<]*(Overlong|several)[^<]*<\/text>/g)).not.toBeNull();
    expect(svg).not.toContain('opacity="0"');
  });

  it("keeps hostile labels as text", async () => {
    const { spec, rows } = caseMarks([row("<script>x</script>", 1, 2)]);
    const svg = await svgOf(spec, rows, { title: "<b>&", description: '"><script>' });
    expect(svg).not.toContain("<script");
    expect(svg).toContain("&lt;script&gt;x&lt;/script&gt;");
    expect(svg).toContain("<title>&#60;b&#62;&#38;</title>");
  });
});
