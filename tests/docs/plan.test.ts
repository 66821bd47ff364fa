// PLAN.md is what a surgeon writes a plan by: its examples are plans, and it leaves no entry out.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readPlan } from "../../src/plan/read-plan.js";

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const document = read("PLAN.md");

it("the plan and the rule that it shows are taken as they stand", () => {
  const [plan, rule] = [...document.matchAll(/```json\n([^]*?)```/g)].map(([, json]) => json!);
  expect(readPlan(plan!, "PLAN.md").primary).toBe("position");
  const ruled = { ...(JSON.parse(plan!) as object), lost: JSON.parse(rule!) as unknown };
  expect(readPlan(JSON.stringify(ruled), "PLAN.md").lost).toHaveProperty("all");
});

it("names every entry that a plan may hold", () => {
  const plans = read("src/plan/types.ts").split("export interface MeasurementPlan")[1]!;
  const entries = new Set([...plans.matchAll(/readonly (\w+)\??:/g)].map(([, name]) => name!));
  expect(entries.size).toBeGreaterThan(30);
  expect([...entries].filter((name) => !document.includes(`\`${name}\``) && !document.includes(`"${name}"`))).toEqual(
    [],
  );
});
