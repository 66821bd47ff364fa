// 81 children after corrective spinal surgery (R package rpart, GPL-2 | GPL-3; Chambers and Hastie 1992, Statistical Models in S): a real
// series, end to end. Deformity was present afterwards in 17 of 81; where the first vertebra was beyond 12 in 2 of 46, else in 15 of 35.
import { readFileSync } from "node:fs";
import { beforeAll, expect, it } from "vitest";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { findings } from "../../src/findings/findings.js";
import type { Findings } from "../../src/findings/types.js";
import { readPlan } from "../../src/plan/read-plan.js";
import { r } from "../r.js";

const file = (name: string): Buffer => readFileSync(new URL(`../reference/data/${name}`, import.meta.url));
const plan = {
  title: "Corrective spinal surgery",
  limb: "spine",
  grade: {
    measurement: "Number",
    cutPoints: [3, 5],
    order: ["two or three levels", "four or five levels", "more levels"],
  },
  success: [{ kind: "position", says: "no deformity afterwards", rule: { column: "Kyphosis", "=": "absent" } }],
  primary: "position",
  subgroups: [{ name: "first vertebra beyond the twelfth", rule: { column: "Start", ">": 12 } }],
};

let found: Findings;
beforeAll(async () => {
  const table = readCases(await readSheet(new Uint8Array(file("kyphosis.csv")), "kyphosis.csv"));
  found = findings(table, readPlan(JSON.stringify(plan), "plan.json"), {
    version: "0",
    sheetSha256: "a",
    planSha256: "b",
  });
});

it("counts 64 of 81, and 44 of 46 against 20 of 35 by the first vertebra", () => {
  const { overall } = found.howOften;
  expect([overall.count.successes, overall.count.trials]).toEqual([64, 81]);
  const { inside, outside } = found.subgroups[0]!;
  expect([inside.count.successes, inside.count.trials]).toEqual([44, 46]);
  expect([outside.count.successes, outside.count.trials]).toEqual([20, 35]);
});

it("cuts the number of levels into three bands and gives R's trend over them", async () => {
  const counts = found.howOften.byGrade.map(({ rate: { count } }) => count);
  const levels = file("kyphosis.csv")
    .toString()
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => Number(line.split(",")[3]));
  expect(counts.map(({ trials }) => trials)).toEqual([
    levels.filter((n) => n <= 3).length,
    levels.filter((n) => n > 3 && n <= 5).length,
    levels.filter((n) => n > 5).length,
  ]);
  const [p] = await r(
    `prop.trend.test(c(${counts.map(({ successes }) => successes).join(",")}), c(${counts.map(({ trials }) => trials).join(",")}))$p.value`,
  );
  const { trend } = found.howOften;
  expect("asymptotic" in trend && trend.asymptotic.p).toBeCloseTo(p!, 10);
});
