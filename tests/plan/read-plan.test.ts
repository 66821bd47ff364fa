import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { PlanError } from "../../src/plan/plan-error.js";
import { readPlan } from "../../src/plan/read-plan.js";

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
