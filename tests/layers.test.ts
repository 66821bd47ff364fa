// Data flows one way; an import that points back is a mistake even when it works.
import { expect, test } from "vitest";

const upTo = (folder: string): string[] => order.slice(0, order.indexOf(folder));
const order = [
  "numeric",
  "stats",
  "cases",
  "plan",
  "ledger",
  "findings",
  "claims",
  "report",
  "charts",
  "notebook",
  "cli",
];
const mayImport: Record<string, readonly string[]> = {
  numeric: [],
  stats: ["numeric"],
  cases: [],
  plan: ["cases"],
  ledger: ["cases", "plan"],
  findings: ["cases", "plan", "ledger", "stats"],
  claims: ["stats"],
  report: ["findings", "claims", "stats", "plan", "cases"],
  charts: ["findings", "report", "stats"],
  notebook: upTo("notebook"),
  cli: upTo("cli"),
};
const sources = import.meta.glob("../src/**/*.ts", { query: "?raw", import: "default", eager: true }) as Record<
  string,
  string
>;

for (const [path, source] of Object.entries(sources)) {
  const folder = path.split("/")[2]!;
  if (folder === "index.ts") continue;
  test(`${path} imports only from ${[folder, ...(mayImport[folder] ?? [])].join(", ")}`, () => {
    expect(order).toContain(folder);
    for (const [, target] of source.matchAll(/(?:from|import\() ?"(?:\.\.\/)+(\w+)\//g))
      if (order.includes(target!)) expect([folder, ...(mayImport[folder] ?? [])]).toContain(target);
  });
}

test("numeric and stats know no document, window, file or table", () => {
  for (const [path, source] of Object.entries(sources))
    if (/\/src\/(numeric|stats)\//.test(path))
      expect(source, path).not.toMatch(/\b(document|window)\.|from "(node:|arquero|vega)/);
});
