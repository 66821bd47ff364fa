import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { readCases } from "../../../src/cases/read-cases.js";
import { readSheet } from "../../../src/cases/read-sheet.js";
import { sectionPictures } from "../../../src/charts/section-pictures.js";
import { findings, findingsOf } from "../../../src/findings/findings.js";
import type { Regrading, RegradingChancesFound } from "../../../src/findings/regrading/types.js";
import type { Findings } from "../../../src/findings/types.js";
import { random } from "../../../src/numeric/random.js";
import { successUnderRegrading } from "../../../src/stats/regrading/success-under-regrading.js";
import { buildLedger } from "../../../src/ledger/build-ledger.js";
import { readPlan } from "../../../src/plan/read-plan.js";
import type { MeasurementPlan, Plan } from "../../../src/plan/types.js";
import { sections } from "../../../src/report/sections.js";
import { plainText, spanText, type Section } from "../../../src/report/text.js";
import { checkDrawing } from "../../charts/check-drawing.js";
import { demoFindings, demoPlan, demoTable } from "../../demo.js";

const reference = JSON.parse(
  readFileSync(new URL("../../reference/regrading-cohort.json", import.meta.url), "utf8"),
) as typeof import("../../reference/regrading-cohort.json");
const from = { version: "0", sheetSha256: "a", planSha256: "b" };
const section = (found: Findings): Section => sections(found).find(({ id }) => id === "grading")!;
const wordsOf = (found: Findings): string =>
  [...section(found).answer, ...section(found).cautions].map(plainText).join("\n");
const partOf = (found: Findings): Regrading => {
  if ("estimate" in found.regrading) throw new Error(found.regrading.because);
  return found.regrading;
};
const chancesOf = (found: Findings): RegradingChancesFound => {
  const { chances } = partOf(found);
  if ("estimate" in chances) throw new Error(chances.because);
  return chances;
};

/** A small sheet: measurement, first technique, success and two readings in each line. */
const small = async (lines: readonly string[], more: Partial<MeasurementPlan> | null, grade?: Plan["grade"]) => {
  const text = ["Case,Measured,First,Worked,R1,R2,Grade", ...lines.map((line, i) => `c${i + 1},${line}`)].join("\n");
  const table = readCases(await readSheet(new TextEncoder().encode(text), "small.csv"));
  const plan = {
    title: "small",
    id: "Case",
    grade: grade ?? { column: "Grade", order: ["I", "II"] },
    ...(more === null ? {} : { measurement: { column: "Measured", cutPoints: [100 / 3], ...more } }),
    technique: { first: "First", closed: ["closed"], open: ["open"] },
    success: [{ kind: "position", says: "worked", rule: { column: "Worked", "=": true } }],
    primary: "position",
  };
  return findings(table, readPlan(JSON.stringify(plan), "plan.json"), from);
};
const four = ["35,closed,yes,35,35,II", "40,closed,no,40,40,I", "10,open,yes,10,10,I", "12,open,no,12,12,I"];

describe("the invented cohort, against exact sums and the normal distribution at 40 digits", () => {
  let found: Findings;
  beforeAll(async () => {
    found = await demoFindings();
  });

  it("takes the observers' error from every radiograph that both observers read, the first reading of each", () => {
    const { error } = partOf(found);
    if (!("source" in error)) throw new Error(error.because);
    expect(error.estimate / reference.error).toBeCloseTo(1, 12);
    expect(error.radiographs).toHaveLength(reference.radiographs);
    expect(error.method).toBe("standard error of measurement, two-way random, absolute agreement");
  });
  it("gives each case its chance of another grade, and the expected number with its range", () => {
    const { cases, trueGrades, readGrades, near, treatments } = chancesOf(found);
    expect(cases.map(({ id }) => id)).toEqual(reference.ids);
    cases.forEach(({ otherTrueGrade, otherReadGrade }, i) => {
      expect(otherTrueGrade / reference.trueValue.each[i]!).toBeCloseTo(1, 9);
      expect(otherReadGrade / reference.anotherReading.each[i]!).toBeCloseTo(1, 9);
    });
    for (const [count, wanted] of [
      [trueGrades, reference.trueValue],
      [readGrades, reference.anotherReading],
    ] as const) {
      expect(count.expected / wanted.expected).toBeCloseTo(1, 11);
      expect([count.range.low, count.range.high]).toEqual(wanted.range);
    }
    expect(near.toSorted()).toEqual(reference.near);
    expect(treatments).toBeNull();
  });
  it("simulates gradings whose ranges are those of the exact distribution", () => {
    const { simulated } = partOf(found);
    if ("estimate" in simulated) throw new Error(simulated.because);
    simulated.grades.forEach(({ casesRange, success }, k) => {
      const { cases, share } = reference.simulated[k]!;
      // An exact quantile is one of few counts and shares; 2,000 gradings may stop at its neighbour.
      expect(Math.abs(casesRange.low - cases[0]!)).toBeLessThanOrEqual(1);
      expect(Math.abs(casesRange.high - cases[2]!)).toBeLessThanOrEqual(1);
      if (!("range" in success)) throw new Error(success.because);
      expect(Math.abs(success.range.low - share[0]!)).toBeLessThan(0.03);
      expect(Math.abs(success.estimate - share[1]!)).toBeLessThan(0.03);
      expect(Math.abs(success.range.high - share[2]!)).toBeLessThan(0.03);
    });
  });
  it("finds where each cut-point turns the trend and the comparison, as trying every quarter does", () => {
    const { moves } = partOf(found);
    if ("estimate" in moves || "estimate" in moves.comparison) throw new Error("not estimable");
    const turns = (rooms: typeof moves.trend) =>
      rooms.map(({ down, up }) => ({ down: down.changesAt, up: up.changesAt }));
    expect(turns(moves.trend)).toEqual(reference.trend);
    expect(turns(moves.comparison)).toEqual(reference.comparison);
    expect(moves.trend[0]!.conclusion).toBe("success falls with grade");
  });
  it("says it", () => {
    expect(wordsOf(found)).toContain(
      "Measured once more by another observer, about 3.0 of 51 shoulders would get another grade (95% range 0 to 6); about 1.5 would not have the grade of their true value (95% range 0 to 4). 12 lie within 1.96 errors of a cut-point. The error is 3.1 (95% CI 2.6 to 3.7; standard error of measurement, two-way random, absolute agreement; 2 observers, 4 columns of readings, 62 radiographs).",
    );
    expect(wordsOf(found)).toContain("No recorded grade differs from the one that the measurement gives.");
    expect(wordsOf(found)).toContain(
      "Over the grades: success falls with grade, wherever one cut-point is put between its neighbours. Closed against open, within grades: closed ahead, until the cut-point at 10 rises to 26 (open ahead), the cut-point at 33 rises to 49 (open ahead) or the cut-point at 67 falls below 51 (open ahead).",
    );
    const [byGrade, near] = section(found).tables;
    expect(byGrade!.rows.map((row) => row.map(spanText))[3]).toEqual([
      "IV",
      "6 of 11",
      "55%",
      "28 to 79",
      "11 to 12",
      "50 to 58",
    ]);
    expect(near!.rows.map((row) => row.map(spanText))[0]).toEqual(["H034", "9", "I", "I", "37%", "41%"]);
    for (const { head, rows } of section(found).tables) for (const row of rows) expect(row).toHaveLength(head.length);
  });
  it("stands after how often it worked, with a mark for every case and a ring for those in doubt", () => {
    const order = sections(found).map(({ id }) => id);
    expect(order[order.indexOf("how-often") + 1]).toBe("grading");
    const picture = sectionPictures(found).find((one) => one.section === "grading")!;
    for (const width of [640, 304]) {
      const drawing = picture.drawing(width);
      checkDrawing(drawing);
      const points = drawing.rows["points"] as unknown as { id: string; fill: string }[];
      expect(points.map(({ id }) => id).toSorted()).toEqual(reference.ids.toSorted());
      expect(
        points
          .filter(({ fill }) => fill === "none")
          .map(({ id }) => id)
          .toSorted(),
      ).toEqual(reference.near);
    }
    expect(picture.caption).toContain("Invented demo cohort.");
  });
  it("gives the same gradings again for the same seed, others for another", async () => {
    const wide = { level: 0.5 };
    const one = partOf(await demoFindings(wide)).simulated;
    expect(partOf(await demoFindings(wide)).simulated).toEqual(one);
    expect(partOf(await demoFindings({ ...wide, seed: 2 })).simulated).not.toEqual(one);
  });
});

describe("a small sheet", () => {
  it("gives 37% at 35 and 9% at 40 with the cut at a third and a stated error of 5", async () => {
    const found = await small(four, { error: 5 });
    const [first, second] = chancesOf(found).cases;
    // Normal distribution: P(Z < -1/3) = 0.36944134, P(Z < -4/3) = 0.09121122 (R, as in the tests of the statistic).
    expect(first!.otherTrueGrade).toBeCloseTo(0.36944134, 7);
    expect(second!.otherTrueGrade).toBeCloseTo(0.09121122, 7);
    expect(wordsOf(found)).toContain("The error is 5.0, as stated in the plan.");
  });
  it("counts treatments only when the plan says which grades are treated open", async () => {
    const found = await small(four, { error: 5, treatedOpen: ["II"] });
    const { treatments, readGrades } = chancesOf(found);
    expect(treatments).toEqual(readGrades);
    expect(wordsOf(found)).toContain(
      "the treatment that goes with it (95% range 0 to 2; open for II, closed otherwise)",
    );
    const one = await small(four, { error: 5, treatedOpen: ["I", "II"] });
    expect(chancesOf(one).treatments).toEqual({ expected: 0, range: { low: 0, high: 0 } });
  });
  it("keeps a recorded grade that is not the measured one, and shows success by both", async () => {
    const found = await small(four, { error: 5 });
    expect(partOf(found).differing).toEqual(["c2"]);
    expect(wordsOf(found)).toContain("is not the one that the measurement gives in 1 of 4");
    expect(section(found).tables[0]!.head.slice(0, 3)).toEqual([
      "Grade",
      "Succeeded, recorded grade",
      "Succeeded, measured grade",
    ]);
    expect(section(found).tables[0]!.rows.map((row) => row.slice(0, 3).map(spanText))).toEqual([
      ["I", "1 of 3", "1 of 2"],
      ["II", "1 of 1", "1 of 2"],
    ]);
  });
  it("compares no recorded grade where the grade is cut from the measurement", async () => {
    const grade = { measurement: "Measured", cutPoints: [30], order: ["I", "II"] };
    const found = await small(four, null, grade);
    expect(partOf(found).differing).toBeNull();
    expect(partOf(found).chances).toEqual({
      estimate: null,
      because: "the plan names neither repeated readings of the measurement nor their error",
    });
    expect(partOf(found).moves).toHaveProperty("trend");
  });
  it("falls back on the spread within radiographs where fewer than two are complete", async () => {
    const uneven = ["35,closed,yes,35,37,II", "40,closed,no,40,,II", "10,open,yes,,10,I"];
    const { error } = partOf(await small(uneven, { readings: ["R1", "R2"] }));
    if (!("source" in error)) throw new Error(error.because);
    // One pair 2 apart: its standard deviation is the square root of 2.
    expect(error.estimate).toBeCloseTo(Math.SQRT2, 12);
    expect(error.method).toBe("within-subject standard deviation");
    expect(error.radiographs).toEqual(["c1"]);
  });
  it("does not take the repeats of one observer for two observers", async () => {
    const lines = ["35,closed,yes,35,37,II", "40,closed,no,41,39,II", "10,open,yes,11,9,I"];
    const found = await small(lines, { readings: [["R1", "R2"]] });
    const { error } = partOf(found);
    if (!("source" in error)) throw new Error(error.because);
    // Three pairs 2 apart: every standard deviation is the square root of 2.
    expect(error.estimate).toBeCloseTo(Math.SQRT2, 12);
    expect(error.method).toBe("within-subject standard deviation");
    expect(error.observers).toBe(1);
    expect(wordsOf(found)).toContain("1 observer, 2 columns of readings");
    expect(wordsOf(found)).toContain("One observer read them all: two observers may differ by more.");
  });
  it("puts a stated error before that of the readings, and tells both", async () => {
    const read = ["35,closed,yes,35,37,II", "40,closed,no,41,39,II", "10,open,yes,11,9,I"];
    const found = await small(read, { readings: ["R1", "R2"], error: 5 });
    // Differences of -2, 2 and 2: residual variance 8/3, raters' means closer than that alone explains.
    expect(wordsOf(found)).toContain("The error is 5.0, as stated in the plan; the readings of the sheet give 1.6.");
  });
});

describe("what the data do not allow", () => {
  const because = (found: Findings): string => ("estimate" in found.regrading ? found.regrading.because : "");
  it.each([
    [four, null, undefined, "the plan names no measurement that the grade stands on"],
    [four, { cutPoints: [] }, { column: "Grade", order: ["I"] }, "the plan names one grade only"],
    [[",closed,yes,,,I", ",open,no,,,II"], { error: 2 }, undefined, "no analysed case has a measurement"],
  ] as const)("is said with its reason (%#)", async (lines, more, grade, reason) => {
    const found = await small(lines, more, grade);
    expect(because(found)).toBe(reason);
    expect(wordsOf(found)).toBe(`This cannot be shown: ${reason}.`);
    expect(sectionPictures(found).some((one) => one.section === "grading")).toBe(false);
  });
  it("is said where all readings are the same, and where none was repeated", async () => {
    const same = await small(four, { readings: ["R1", "R2"] });
    expect(wordsOf(same)).toContain(
      "How many grades would change cannot be told: all readings of a radiograph are the same, so that they show no error.",
    );
    expect(section(same).tables).toHaveLength(1);
    const once = ["35,closed,yes,35,,II", "10,open,no,,10,I"];
    expect(partOf(await small(once, { readings: ["R1", "R2"] })).chances).toEqual({
      estimate: null,
      because: "no radiograph has two readings",
    });
  });
  it("is said of the comparison where one technique was used, and of all outcomes while a question is open", async () => {
    const closed = await small(["35,closed,yes,,,II", "10,closed,no,,,I"], { error: 2 });
    expect(wordsOf(closed)).toContain(
      "Closed against open is not tried: not both techniques were used in these cases.",
    );
    const asked = await small(["35,closed,maybe so,,,II", "10,open,no,,,I", "12,open,yes,,,I"], { error: 2 });
    expect(asked.openQuestions).toBeGreaterThan(0);
    const reason = { estimate: null, because: "questions are open on some of these cases" };
    expect(partOf(asked)).toMatchObject({ simulated: reason, moves: reason });
  });
});

describe("a page that is redrawn", () => {
  it("does not try the cut-points again at another level, and does for another success", async () => {
    const [table, plan] = [await demoTable(), demoPlan()];
    const ledger = buildLedger(table, plan);
    const movesAt = (options: Parameters<typeof findingsOf>[4]) =>
      partOf(findingsOf(ledger, table, plan, from, options)).moves;
    const first = movesAt({ level: 0.95 });
    expect(movesAt({ level: 0.9 })).toBe(first);
    expect(movesAt({ success: "technical" })).not.toEqual(first);
    expect(movesAt({ success: "position" })).toBe(first);
  });
  it("simulates 2,000 gradings of 64 cases in a few times what their random numbers take", () => {
    const shortest = (work: () => void): number =>
      Math.min(
        ...Array.from({ length: 30 }, () => {
          const start = performance.now();
          work();
          return performance.now() - start;
        }),
      );
    const cases = Array.from({ length: 64 }, (_, k) => ({ value: 1.5 * k, success: k % 5 > 0 }));
    const numbers = shortest(() => {
      const stream = random(1);
      for (let k = 0; k < 2000 * cases.length; k++) stream.uniform();
    });
    const gradings = shortest(() => void successUnderRegrading(cases, { cuts: [10, 33, 67], error: 3 }));
    expect(gradings).toBeLessThan(10 * numbers);
  });
});
