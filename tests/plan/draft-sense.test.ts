// A column that records failures must not be read as one of successes.
import { expect, test } from "vitest";
import { draftPlan } from "../../src/plan/draft-plan.js";
import { ofText } from "../cases/sheet-of.js";

test("drafts success as the absence of a failure where the heading names the failure", async () => {
  const table = await ofText("ID,Grade,Failed\nH1,II,N\nH2,III,Y\n");
  expect(draftPlan(table).plan.success).toEqual([
    { kind: "position", says: '"Failed" is recorded as no', rule: { column: "Failed", "=": false } },
  ]);
});
