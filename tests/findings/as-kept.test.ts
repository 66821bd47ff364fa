import { expect, it } from "vitest";
import { findings } from "../../src/findings/findings.js";
import { draftPlan } from "../../src/plan/draft-plan.js";
import { demoFindings, demoTable } from "../demo.js";

const provenance = { version: "0", sheetSha256: "a", planSha256: "b" };

it("the sheet as a busy clinic keeps it gives the counts of the tidy one, with a plan drafted from it alone", async () => {
  const table = await demoTable("cohort-as-kept.csv");
  expect(table.identifiers).toEqual(["Who: Name"]);
  const { plan } = draftPlan(table);
  const kept = findings(table, plan, provenance);
  const tidy = await demoFindings();
  expect(kept.who.ladder.map(({ cases, children }) => [cases.length, children.length])).toEqual(
    tidy.who.ladder.map(({ cases, children }) => [cases.length, children.length]),
  );
  expect(kept.howOften.byGrade.map(({ rate }) => [rate.count.succeeded, rate.count.failed])).toEqual(
    tidy.howOften.byGrade.map(({ rate }) => [rate.count.succeeded, rate.count.failed]),
  );
});
