import { expect, it } from "vitest";
import type { GradedReadings } from "../../../src/cases/readings/types.js";
import { gradeFindings } from "../../../src/findings/agreement/grade-findings.js";
import { random } from "../../../src/numeric/random.js";

it("five raters, 2,000 radiographs, a fifth missing: every coefficient with 2,000 resamples in seconds", () => {
  const stream = random(3);
  const grade = (): number => Math.floor(4 * stream.uniform());
  const readings = Array.from({ length: 2000 }, () => {
    const truth = grade();
    return Array.from({ length: 5 }, () => (stream.uniform() < 0.2 ? null : stream.uniform() < 0.75 ? truth : grade()));
  });
  const given: GradedReadings = {
    kind: "grades",
    file: "invented",
    radiographs: readings.map((_, i) => ({ id: String(i + 1), row: i + 2 })),
    columns: ["A", "B", "C", "D", "E"].map((name) => ({ name, rater: name, occasion: 1 })),
    notes: [],
    grades: ["I", "II", "III", "IV"],
    numbers: null,
    readings,
  };
  const start = performance.now();
  const found = gradeFindings(given, { level: 0.95, resamples: 2000, seed: 1 });
  const seconds = (performance.now() - start) / 1000;
  expect(found.pairs).toHaveLength(10);
  expect(found.alpha.ordinal).toMatchObject({ undefinedResamples: 0 });
  // The goal is 2 s on a free machine; a shared one is given five times as long.
  expect(seconds).toBeLessThan(10);
});
