import { readFileSync } from "node:fs";
import { readCases } from "../src/cases/read-cases.js";
import { readSheet } from "../src/cases/read-sheet.js";
import type { CaseTable } from "../src/cases/types.js";
import { findings } from "../src/findings/findings.js";
import type { Findings } from "../src/findings/types.js";
import { readPlan } from "../src/plan/read-plan.js";
import type { Plan } from "../src/plan/types.js";

const file = (name: string): Buffer => readFileSync(new URL(`../data-demo/${name}`, import.meta.url));

/** The invented demo cohort, read as the kit reads it. */
export async function demoTable(name = "cohort.csv"): Promise<CaseTable> {
  return readCases(await readSheet(new Uint8Array(file(name)), name));
}

export function demoPlan(): Plan {
  return readPlan(file("cohort-plan.json").toString("utf8"), "cohort-plan.json");
}

export async function demoFindings(options: Parameters<typeof findings>[3] = {}): Promise<Findings> {
  return findings(await demoTable(), demoPlan(), { version: "0", sheetSha256: "a", planSha256: "b" }, options);
}
