import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { PlanError } from "../../src/plan/plan-error.js";
import { checkPlan } from "../../src/plan/check-plan.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { demoTable } from "../demo.js";

const demo = readFileSync(new URL("../../data-demo/cohort-plan.json", import.meta.url), "utf8");
const small = {
  title: "t",
  grade: { column: "Grade", order: ["I", "II"] },
  success: [{ kind: "position", says: "s", rule: { column: "S", "=": true } }],
  primary: "position",
};
const faultsOf = (plan: unknown): readonly string[] => {
  try {
    readPlan(typeof plan === "string" ? plan : JSON.stringify(plan), "plan.json");
  } catch (error) {
    expect(error).toBeInstanceOf(PlanError);
    return (error as PlanError).faults;
  }
  throw new Error("the plan was accepted");
};

it("reads the demo plan and fills in the defaults", () => {
  const plan = readPlan(demo, "cohort-plan.json");
  expect(plan.success.map(({ kind }) => kind)).toEqual(["position", "technical", "motion"]);
  expect(readPlan(JSON.stringify(small), "p.json")).toMatchObject({
    unit: "limb",
    limb: "limb",
    exclusions: [],
    subgroups: [],
  });
});

it("reads ASCII spellings of the comparators", () => {
  const plan = readPlan(JSON.stringify({ ...small, lost: { column: "x", ">=": 3 } }), "p.json");
  expect(plan.lost).toEqual({ column: "x", "≥": 3 });
});

it("names each fault by its place, all of them at once", () => {
  expect(faultsOf("{")[0]).toMatch(/^is not JSON/);
  expect(faultsOf({ ...small, title: "", primary: "motion" })).toContain("title: must not be empty");
  expect(faultsOf({ ...small, sucess: [] })).toEqual(["sucess: no such entry is known"]);
  expect(faultsOf({ ...small, primary: "motion" })).toEqual(["primary must be one of the kinds under success"]);
  expect(faultsOf({ ...small, success: [] })).toContain("success: must hold at least one success rule");
  expect(faultsOf({ title: "t", primary: "position" })).toContain("success: is missing");
  expect(faultsOf({ ...small, lost: { column: "x" } })).toEqual([
    "lost: must hold exactly one of =, in, <, ≤, >, ≥, present",
  ]);
  expect(faultsOf({ ...small, unit: "patient", limb: "" })).toEqual([
    'unit: must be "limb" or "child"',
    "limb: must not be empty",
  ]);
});

it("says what an error message says, with the file", () => {
  expect(() => readPlan("[]", "p.json")).toThrow(/^p\.json: /);
});

describe("readings and error of the measurement", () => {
  const measured = (more: object, grade: unknown = small.grade) => ({
    ...small,
    grade,
    measurement: { column: "M", cutPoints: [10], ...more },
  });
  it("are optional and kept as they are", () => {
    const entries = { readings: ["A", "B"], error: 2.5, treatedOpen: ["II"] };
    expect(readPlan(JSON.stringify(measured(entries)), "p.json").measurement).toMatchObject(entries);
    expect(readPlan(demo, "cohort-plan.json").measurement!.readings!.flat()).toHaveLength(4);
    const twice = { readings: [["A1", "A2"], "B"] };
    expect(readPlan(JSON.stringify(measured(twice)), "p.json").measurement).toMatchObject(twice);
  });
  it.each([
    [{ readings: ["A"] }, "measurement.readings: must name at least two columns"],
    [{ readings: ["A", "A"] }, "measurement.readings: must not name a column twice"],
    [{ readings: ["A", ["B", "A"]] }, "measurement.readings: must not name a column twice"],
    [{ readings: ["A", [], "B"] }, "measurement.readings[1]: must name at least one column"],
    [{ readings: ["A", ""] }, "measurement.readings[1]: must not be empty"],
    [{ error: 0 }, "measurement.error: must be above 0"],
    [{ error: -1 }, "measurement.error: must be above 0"],
    [{ error: "2" }, 'measurement.error: must be number, got "2"'],
    [{ treatedOpen: [] }, "measurement.treatedOpen: must name at least one grade"],
    [{ treatedOpen: ["V"] }, "measurement.treatedOpen must name grades of the plan"],
    [{ raters: ["A", "B"] }, "measurement.raters: no such entry is known"],
    [{ cutPoints: [10, 20] }, "measurement must have one cut-point less than grades"],
  ])("refuses %j", (more, fault) => expect(faultsOf(measured(more))).toEqual([fault]));
  it("refuses other cut-points than those of a measured grade", () => {
    const grade = { measurement: "M", cutPoints: [11], order: ["I", "II"] };
    expect(faultsOf(measured({}, grade))).toEqual([
      "measurement must have the column and the cut-points that the grade is cut by",
    ]);
    expect(
      faultsOf({ ...small, measurement: { column: "M", cutPoints: [10], treatedOpen: ["I"] }, grade: undefined }),
    ).toEqual(["measurement.treatedOpen must name grades of the plan"]);
  });
  it("must be columns of the sheet", async () => {
    const table = await demoTable();
    const plan = readPlan(demo.replace("Displacement B2", "Displacement C1"), "cohort-plan.json");
    expect(() => checkPlan(plan, table, "cohort-plan.json")).toThrow(
      'measurement.readings[1][1]: cohort.csv has no column "Displacement C1"',
    );
  });
});
