// The statement is run by DuckDB, an embedded SQL engine, and must count what the ledger counts.
import { DuckDBInstance } from "@duckdb/node-api";
import { expect, it } from "vitest";
import { countRows } from "../../src/findings/count-rows.js";
import { buildLedger } from "../../src/ledger/build-ledger.js";
import { planSql } from "../../src/plan/plan-sql.js";
import type { Plan } from "../../src/plan/types.js";
import { demoPlan, demoTable } from "../demo.js";

const numeric = [
  "Displacement (% of width)",
  "Displacement after reduction (%)",
  "Displacement at union (%)",
  "Elevation (degrees)",
  "Age (years)",
  "Delay (days)",
  "Follow-up (months)",
];

async function counted(plan: Plan, success: "technical" | "position" | "motion"): Promise<unknown[]> {
  const table = await demoTable();
  const engine = await DuckDBInstance.create(":memory:");
  const connection = await engine.connect();
  try {
    const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    const columns = table.columns.map(({ name }) => `${quoted(name)} ${numeric.includes(name) ? "DOUBLE" : "VARCHAR"}`);
    await connection.run(`CREATE TABLE cases (${columns.join(", ")})`);
    for (const { values } of table.cases) {
      const cells = values.map((value, i) => {
        if (value.kind === "number") return String(value.number);
        if (numeric.includes(table.columns[i]!.name)) return "NULL";
        if (value.kind === "missing") return value.reason === "lost" ? "'lost'" : "NULL";
        const text =
          value.kind === "text"
            ? value.text
            : value.kind === "grade"
              ? value.grade
              : value.kind === "yesNo"
                ? value.yes
                  ? "yes"
                  : "no"
                : "";
        return `'${text.replaceAll("'", "''")}'`;
      });
      await connection.run(`INSERT INTO cases VALUES (${cells.join(", ")})`);
    }
    const reader = await connection.runAndReadAll(planSql(plan, { table: "cases", success }));
    return reader.getRows().map(([grade, technique, successes, cases]) => ({
      grade,
      technique,
      successes: Number(successes),
      cases: Number(cases),
    }));
  } finally {
    connection.closeSync();
  }
}

it.each(["position", "technical", "motion"] as const)("counts the cells of %s as the ledger does", async (success) => {
  const plan = demoPlan();
  const rows = countRows(buildLedger(await demoTable(), plan), success);
  const byCell = (row: unknown): string => JSON.stringify(row);
  const found = await counted(plan, success);
  expect(found.map(byCell).toSorted()).toEqual(rows.map(byCell).toSorted());
  expect(rows.length).toBeGreaterThan(5);
});

it("cuts grades from a measurement as the ledger does", async () => {
  const { grade, ...rest } = demoPlan();
  void grade;
  const plan: Plan = {
    ...rest,
    grade: { measurement: "Displacement (% of width)", cutPoints: [10, 33, 67], order: ["I", "II", "III", "IV"] },
  };
  const rows = countRows(buildLedger(await demoTable(), plan), "position");
  expect((await counted(plan, "position")).map((row) => JSON.stringify(row)).toSorted()).toEqual(
    rows.map((row) => JSON.stringify(row)).toSorted(),
  );
});

it("quotes names and words that would end a statement", () => {
  const sql = planSql({ ...demoPlan(), lost: { column: 'a"; DROP TABLE cases; --', "=": "it's" } }, { table: 'x"y' });
  expect(sql).toContain(`"a""; DROP TABLE cases; --"`);
  expect(sql).toContain("'it''s'");
  expect(sql).toContain('FROM "x""y"');
});

it("refuses what GROUP BY alone cannot count", () =>
  expect(() => planSql({ ...demoPlan(), unit: "child" }, { table: "cases" })).toThrow(
    new RangeError("planSql: unit must be limb, got child"),
  ));
